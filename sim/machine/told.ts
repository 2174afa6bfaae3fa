/** Values as a message tells them: short, with a true minus, whatever came. */

const LONGEST_TOLD = 60
const LONGEST_KEPT = 1000
const DEEPEST_KEPT = 8

export const toldNumber = (value: number): string => String(value).replaceAll('-', '−')

export const withUnit = (number: string, unit: string): string => (unit === '' ? number : `${number} ${unit}`)

const cut = (text: string, longest: number): string =>
  text.length <= longest ? text : `${text.slice(0, longest)}… (${text.length} characters)`

export function told(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (value === null) return 'null'
  if (typeof value === 'number') return toldNumber(value)
  if (typeof value === 'string') return `the text '${cut(value, LONGEST_TOLD)}'`
  if (typeof value === 'boolean' || typeof value === 'bigint') return cut(String(value), LONGEST_TOLD)
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object') return 'a group of fields'
  return `a ${typeof value}`
}

/**
 * A value that no field takes, written out as JSON so that a person can keep it; cut where it is huge or
 * endless.
 */
export function keptText(value: unknown): string {
  let left = LONGEST_KEPT
  const write = (part: unknown, depth: number): string => {
    if (left <= 0) return '…'
    if (typeof part !== 'object' || part === null) {
      const text = typeof part === 'string' ? JSON.stringify(part.slice(0, left)) : String(part)
      left -= text.length
      return text
    }
    if (depth === DEEPEST_KEPT) return '…'
    const texts: string[] = []
    for (const [key, property] of Object.entries(Object.getOwnPropertyDescriptors(part))) {
      if (!property.enumerable) continue
      if (left <= 0) {
        texts.push('…')
        break
      }
      left -= key.length + 4
      const text = write(property.value, depth + 1)
      texts.push(Array.isArray(part) ? text : `${JSON.stringify(key.slice(0, LONGEST_TOLD))}: ${text}`)
    }
    return Array.isArray(part) ? `[${texts.join(', ')}]` : `{${texts.join(', ')}}`
  }
  return write(value, 0)
}
