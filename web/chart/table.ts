/** Columns of numbers as text: comma-separated values after RFC 4180, in full precision. */

export interface Column {
  /** With its unit, as in 'motor current [A]' */
  readonly heading: string
  readonly values: ArrayLike<number>
}

const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)

/** A value that is not there is an empty field. */
const written = (value: number | undefined): string =>
  value === undefined || !Number.isFinite(value) ? '' : String(value)

export function csvText(columns: readonly Column[]): string {
  const rows = Math.max(0, ...columns.map(({ values }) => values.length))
  const lines = [columns.map(({ heading }) => quoted(heading)).join(',')]
  for (let row = 0; row < rows; row++) lines.push(columns.map(({ values }) => written(values[row])).join(','))
  return `${lines.join('\r\n')}\r\n`
}
