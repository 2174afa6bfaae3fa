import { mkdirSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const ROOT = fileURLToPath(new URL('../..', import.meta.url))

/** Where scripts keep what may be thrown away; made when first asked for. */
export function cacheFolder() {
  const folder = join(ROOT, 'node_modules/.cache/counterturn')
  mkdirSync(folder, { recursive: true })
  return folder
}

/** Newest change [ms since 1970] below a path, folders included, so that a deleted file counts as a change. */
export function newestChange(path) {
  const entry = statSync(path)
  if (!entry.isDirectory()) return entry.mtimeMs
  return readdirSync(path).reduce(
    (newest, name) => Math.max(newest, newestChange(join(path, name))),
    entry.mtimeMs,
  )
}
