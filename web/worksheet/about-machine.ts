/** What can be asked about one machine. */
import { FAMILIES } from '../../sim/question/bank.ts'
import type { Family } from '../../sim/question/family.ts'

/** Families whose stage is nothing but the machine's counts and hand. */
export const MACHINE_FAMILIES: readonly Family[] = FAMILIES.filter(
  (family) =>
    family.gearing?.(family.example) &&
    family.parameters.some(({ name }) => name === 'z2' || name === 'hand'),
)
