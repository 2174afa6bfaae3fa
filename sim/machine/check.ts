/** Every problem of a machine at once, in the order of its fields. Nothing here throws on data. */
import { gearProblems } from '../gear/gear-problems.ts'
import { MACHINE_FORM } from './form.ts'
import type { Machine } from './machine.ts'
import { lockingNotes, offsetProblems, rotorProblems, widthProblems } from './mesh-problems.ts'
import { ownValue, pathKeys } from './path.ts'
import { hasErrors } from './problem.ts'
import type { Problem } from './problem.ts'
import { readForm } from './read-form.ts'
import { fittingProblems, togetherProblems } from './rules.ts'
import { outputClash } from './timing-problems.ts'

export interface CheckedMachine {
  /** A clean copy, free of unknown fields and of NaN; null when a problem is an error. */
  readonly machine: Machine | null
  readonly problems: readonly Problem[]
}

const PART_ORDER = Object.keys(MACHINE_FORM.parts)

/**
 * Problems of several checks, part by part of the machine; within a part they keep the order of the checks.
 */
function inPartOrder(problems: readonly Problem[]): readonly Problem[] {
  const place = ({ path }: Problem): number => PART_ORDER.indexOf(pathKeys(path)[0] ?? '')
  return [...problems].sort((a, b) => place(a) - place(b))
}

/** Whether any value is a machine, by its shape, its ranges and what fits together, without the physics. */
export function checkShape(value: unknown): CheckedMachine {
  const problems: Problem[] = []
  const read = readForm(MACHINE_FORM, value, '', problems)
  problems.push(...fittingProblems(value), ...togetherProblems(value))
  // The form has the parts of a Machine; a value read without an error by it is one.
  return { machine: hasErrors(problems) ? null : (read as Machine), problems: inPartOrder(problems) }
}

/** One part of a machine when it is right by itself, whatever is wrong elsewhere. */
function rightPart<Part extends keyof Machine>(value: unknown, part: Part): Machine[Part] | undefined {
  const form = MACHINE_FORM.parts[part]
  return form && (readForm(form, ownValue(value, part), part, []) as Machine[Part] | undefined)
}

function physicsProblems(value: unknown): readonly Problem[] {
  const gearing = rightPart(value, 'gearing')
  const rotor = rightPart(value, 'rotor')
  const outputs = rightPart(value, 'outputs')
  if (!gearing) return []
  const tooWide = widthProblems(gearing)
  return [
    ...(tooWide.length > 0 ? tooWide : gearProblems(gearing)),
    ...lockingNotes(gearing),
    ...(rotor && outputs ? rotorProblems(gearing, rotor, outputs) : []),
    ...(outputs ? [...offsetProblems(gearing, outputs), ...outputClash({ gearing, outputs })] : []),
  ]
}

/** Whether any value is a machine, with the physics of its parts. */
export function checkValue(value: unknown): CheckedMachine {
  const shape = checkShape(value)
  const physics = physicsProblems(value)
  // where the physics warns with a reason, that a value is not usual goes without saying
  const explained = new Set(physics.filter(({ severity }) => severity !== 'note').map(({ path }) => path))
  const kept = shape.problems.filter(({ severity, path }) => severity === 'error' || !explained.has(path))
  const problems = inPartOrder([...kept, ...physics])
  return { machine: hasErrors(problems) ? null : shape.machine, problems }
}

/**
 * Everything that can be told about a machine, also one with numbers that a person is still putting right.
 */
export const checkMachine = (machine: Machine): readonly Problem[] => checkValue(machine).problems
