/** What is said at one path: each problem as 'severity: message'. */
import { checkShape } from '../../../sim/machine/check.ts'
import type { Problem } from '../../../sim/machine/problem.ts'

export const at = (problems: readonly Problem[], path: string): string[] =>
  problems
    .filter((problem) => problem.path === path)
    .map(({ severity, message }) => `${severity}: ${message}`)

export const shapeAt = (value: unknown, path: string): string[] => at(checkShape(value).problems, path)
