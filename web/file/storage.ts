/** What this browser keeps between visits, and what to say when it will not. */

/** The two calls of a browser's storage that are used; each of them may throw. */
export interface Keeper {
  getItem(key: string): string | null
  setItem(key: string, value: string): void
}

/** One that can also be told to keep no longer. */
export interface ErasableKeeper extends Keeper {
  removeItem(key: string): void
}

/** The browser's own storage; null where asking for it is already forbidden. */
export function browserKeeper(): ErasableKeeper | null {
  try {
    return window.localStorage
  } catch {
    return null
  }
}

export type Kept =
  | { readonly ok: true }
  | { readonly ok: false; readonly reason: 'missing' | 'full' | 'forbidden' }

export function keep(keeper: Keeper | null, key: string, value: string): Kept {
  if (!keeper) return { ok: false, reason: 'missing' }
  try {
    keeper.setItem(key, value)
    return { ok: true }
  } catch (error) {
    const full = error instanceof Error && error.name === 'QuotaExceededError'
    return { ok: false, reason: full ? 'full' : 'forbidden' }
  }
}

/** Null when nothing is kept there, or when it may not be read. */
export function kept(keeper: Keeper | null, key: string): string | null {
  try {
    return keeper?.getItem(key) ?? null
  } catch {
    return null
  }
}
