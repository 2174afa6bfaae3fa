/** The families of the bank, in the order in which a learner meets them. */
import type { Family } from './family.ts'
import { FITTING } from './families/fitting.ts'
import { FRICTION } from './families/friction.ts'
import { POWER } from './families/power.ts'
import { SAFETY } from './families/safety.ts'
import { SENSES } from './families/senses.ts'
import { SPEED } from './families/speed.ts'
import { stepTurns } from './families/steps.ts'
import { STROBE } from './families/strobe.ts'
import { SUPPLY } from './families/supply.ts'
import { teethPassed, toothReturn } from './families/teeth.ts'
import { THRUST } from './families/thrust.ts'
import { TORQUE } from './families/torque.ts'
import { TURNING } from './families/turning.ts'
import { WARMTH } from './families/warmth.ts'

/** Version of the bank: it changes when a list of parameters or a wording does. */
export const BANK = 1

export const FAMILIES: readonly Family[] = [
  ...TURNING,
  teethPassed,
  ...SENSES,
  ...SPEED,
  stepTurns,
  ...TORQUE,
  ...POWER,
  toothReturn,
  ...FRICTION,
  ...THRUST,
  ...FITTING,
  ...SUPPLY,
  ...WARMTH,
  ...STROBE,
  ...SAFETY,
]

export const familyNamed = (name: string): Family | undefined =>
  FAMILIES.find((family) => family.name === name)
