/** Two pieces of plain data compared by path, as in 'gearing.wheelTeeth' or 'control.steps.2.voltage'. */

export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json }
export type Differences = Readonly<Record<string, Json>>

export const isBranch = (value: unknown): value is Record<string, Json> =>
  typeof value === 'object' && value !== null

/** Listed by the value itself: neither inherited, as '__proto__', nor hidden, as the length of a list. */
const holds = (value: object, key: string): boolean => Object.prototype.propertyIsEnumerable.call(value, key)

/** Two lists of one length, or two objects with the same keys. */
function sameShape(a: Record<string, Json>, b: Record<string, Json>): boolean {
  const keys = Object.keys(a)
  return (
    Array.isArray(a) === Array.isArray(b) &&
    keys.length === Object.keys(b).length &&
    keys.every((key) => holds(b, key))
  )
}

/** What has to be set in `base` to make it `value`, as few and as small parts as their shapes allow. */
export function differencesBetween(base: unknown, value: unknown): Differences {
  const found: Record<string, Json> = {}
  const compare = (a: unknown, b: unknown, path: string) => {
    if (Object.is(a, b)) return
    if (path.length > 0 && !(isBranch(a) && isBranch(b) && sameShape(a, b))) found[path] = b as Json
    else
      for (const [key, part] of Object.entries(b as Record<string, Json>))
        compare((a as Record<string, Json>)[key], part, path ? `${path}.${key}` : key)
  }
  compare(base, value, '')
  return found
}

export const isSame = (a: unknown, b: unknown): boolean =>
  Object.keys(differencesBetween([a], [b])).length === 0

/** A copy of `base` with the differences set. Paths that `base` does not have are set aside, never followed. */
export function withDifferences(base: unknown, differences: Differences): { value: Json; aside: string[] } {
  const value = structuredClone(base) as Json
  const aside: string[] = []
  for (const [path, part] of Object.entries(differences)) {
    const keys = path.split('.')
    const last = keys.pop()!
    let place: unknown = value
    for (const key of keys) place = isBranch(place) && holds(place, key) ? place[key] : null
    if (isBranch(place) && holds(place, last)) place[last] = part
    else aside.push(path)
  }
  return { value, aside }
}

/** JSON as short as it can be, with the sign of zero, which the language's own writer drops. */
export function jsonText(value: Json): string {
  if (Object.is(value, -0)) return '-0'
  if (Array.isArray(value)) return `[${value.map(jsonText).join(',')}]`
  if (!isBranch(value)) return JSON.stringify(value)
  return `{${Object.entries(value)
    .map(([key, part]) => `${JSON.stringify(key)}:${jsonText(part)}`)
    .join(',')}}`
}
