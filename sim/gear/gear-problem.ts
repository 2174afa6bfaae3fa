/** One thing that is wrong with a pair, or worth knowing: what is asked for, what came, what cures it. */
export interface GearProblem {
  readonly path: string
  readonly severity: 'error' | 'warning' | 'note'
  readonly message: string
}

export const error = (path: string, message: string): GearProblem => ({ path, severity: 'error', message })
export const warning = (path: string, message: string): GearProblem => ({
  path,
  severity: 'warning',
  message,
})
export const note = (path: string, message: string): GearProblem => ({ path, severity: 'note', message })

/** Three figures, with a true minus. */
export const rounded = (value: number): string => String(Number(value.toPrecision(3))).replace('-', '−')
