/** What keeps readings from being used, or should be known of a result drawn from them. Collected, never thrown. */
export interface ReadingProblem {
  /** As in 'rows[3].current'; '' is all rows together */
  readonly path: string
  /** error: there is no result; warning: it may mislead */
  readonly severity: 'error' | 'warning'
  readonly message: string
}

export const refused = (path: string, message: string): ReadingProblem => ({
  path,
  severity: 'error',
  message,
})

export const doubted = (path: string, message: string): ReadingProblem => ({
  path,
  severity: 'warning',
  message,
})

/** An error for each number of a row that is not finite, and for each uncertainty that is not above 0. */
export function rowProblems<Row extends object>(
  rows: readonly Row[],
  uncertainties: readonly (keyof Row)[],
): ReadingProblem[] {
  const problems: ReadingProblem[] = []
  rows.forEach((row, k) => {
    for (const [name, value] of Object.entries(row)) {
      if (typeof value === 'number' && Number.isFinite(value)) continue
      problems.push(refused(`rows[${k}].${name}`, `must be a finite number, got ${String(value)}`))
    }
    for (const name of uncertainties) {
      const value: unknown = row[name]
      if (typeof value !== 'number' || value > 0 || Number.isNaN(value)) continue
      problems.push(refused(`rows[${k}].${String(name)}`, `must be above 0, got ${value}`))
    }
  })
  return problems
}

/** An error where a number that goes with the rows is not finite, or not above `above`. */
export function numberProblems(path: string, value: number, above = -Infinity): ReadingProblem[] {
  if (Number.isFinite(value) && value > above) return []
  const wanted = above === -Infinity ? 'a finite number' : `a finite number above ${above}`
  return [refused(path, `must be ${wanted}, got ${value}`)]
}
