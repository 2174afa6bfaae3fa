/** Storages of a browser that does, and of browsers that do not, keep what they are given. */
import type { ErasableKeeper } from '../../../web/file/storage.ts'

export interface Memory extends ErasableKeeper {
  readonly kept: Map<string, string>
}

export function memory(entries: Readonly<Record<string, string>> = {}): Memory {
  const kept = new Map(Object.entries(entries))
  return {
    kept,
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => void kept.set(key, value),
    removeItem: (key) => void kept.delete(key),
  }
}

/** Reads, but refuses to write. */
export const refusing = (name: string, entries: Readonly<Record<string, string>> = {}): Memory => ({
  ...memory(entries),
  setItem: () => {
    throw new DOMException('refused', name)
  },
})

/** A private window in which even asking is forbidden. */
export function forbidding(): ErasableKeeper {
  const refuse = () => {
    throw new DOMException('refused', 'SecurityError')
  }
  return { getItem: refuse, setItem: refuse, removeItem: refuse }
}
