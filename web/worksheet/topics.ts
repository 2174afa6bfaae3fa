/** The families as they are looked for: by what they are about. */
import type { Family } from '../../sim/question/family.ts'
import { FITTING } from '../../sim/question/families/fitting.ts'
import { FRICTION } from '../../sim/question/families/friction.ts'
import { POWER } from '../../sim/question/families/power.ts'
import { SAFETY } from '../../sim/question/families/safety.ts'
import { SENSES } from '../../sim/question/families/senses.ts'
import { SPEED } from '../../sim/question/families/speed.ts'
import { stepTurns } from '../../sim/question/families/steps.ts'
import { STROBE } from '../../sim/question/families/strobe.ts'
import { SUPPLY } from '../../sim/question/families/supply.ts'
import { teethPassed, toothReturn } from '../../sim/question/families/teeth.ts'
import { THRUST } from '../../sim/question/families/thrust.ts'
import { TORQUE } from '../../sim/question/families/torque.ts'
import { TURNING } from '../../sim/question/families/turning.ts'
import { WARMTH } from '../../sim/question/families/warmth.ts'

export interface Topic {
  readonly name: string
  readonly families: readonly Family[]
}

export const TOPICS: readonly Topic[] = [
  { name: 'Turns and teeth', families: [...TURNING, teethPassed, toothReturn] },
  { name: 'Senses', families: SENSES },
  { name: 'Speed', families: [...SPEED, stepTurns] },
  { name: 'Torque', families: TORQUE },
  { name: 'Power', families: POWER },
  { name: 'Friction in the mesh', families: FRICTION },
  { name: 'Thrust', families: THRUST },
  { name: 'Putting together and choosing', families: FITTING },
  { name: 'Supply', families: SUPPLY },
  { name: 'Warmth and wear', families: WARMTH },
  { name: 'Flashing light', families: STROBE },
  { name: 'Opening a machine', families: SAFETY },
]
