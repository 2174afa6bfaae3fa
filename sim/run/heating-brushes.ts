import type { Reading } from '../drive/reading.ts'
import type { SparkGrade } from '../heat/commutation.ts'
import {
  brushDensity,
  commutationIndex,
  commutationTime,
  reactanceVoltage,
  sparkGrade,
  transformerVoltage,
} from '../heat/commutation.ts'
import {
  brushContactLoss,
  brushFrictionLoss,
  brushLife,
  brushWear,
  lifeAgainstUsual,
  slidingSpeed,
} from '../heat/brush-wear.ts'
import type { Machine } from '../machine/machine.ts'
import { TURN } from '../quantity/constants.ts'

/** What a reading means for the sliding contact; indicative. */
export interface BrushState {
  /** [m/s] */
  readonly slidingSpeed: number
  /** [s]; Infinity at standstill */
  readonly commutationTime: number
  /** In the coil that turns over [V]: mean of its inductance, and r.m.s. of an alternating flux */
  readonly reactanceVoltage: number
  readonly transformerVoltage: number
  /** Both over half the drop of the pair; 0 where there is no drop to hold them against and nothing to hold */
  readonly index: number
  /** [A/m2], and over its limit */
  readonly density: number
  readonly densityRatio: number
  readonly grade: SparkGrade
  /** Of both brushes [W]; friction here is part of the constant friction of the rotor */
  readonly frictionLoss: number
  readonly contactLoss: number
  /** [mm/1000 h] */
  readonly wear: number
  /** [h]; Infinity while nothing wears */
  readonly life: number
  readonly lifeAgainstUsual: 'shorter' | 'usual' | 'longer'
}

const MILLI = 1e-3
const MICRO = 1e-6
const PER_CM2 = 1e4 // 1/m2

/** Null without a motor or without a description of its brushes. */
export function brushState({ motor, brushes }: Machine, reading: Reading): BrushState | null {
  if (!motor || !brushes) return null
  const n = Math.abs(reading.wormSpeed) / TURN
  const diameter = brushes.commutatorDiameter * MILLI
  const v = slidingSpeed(diameter, n)
  const time = commutationTime(brushes.arcWidth * MILLI, diameter, n)
  // The armature current: mean of a direct, effective value of an alternating one.
  const current = motor.kind === 'universal' ? reading.currentRms : reading.currentMean
  const reactance = reactanceVoltage(brushes.coilInductance * MICRO, current, time)
  const transformer = transformerVoltage(reading.wallFrequency, brushes.coilTurns, brushes.peakFlux * MICRO)
  const induced = reactance + transformer
  const index = induced === 0 ? 0 : commutationIndex(reactance, transformer, motor.brushDrop / 2)
  const density = brushDensity(reading.currentRms, brushes.area * MILLI ** 2)
  const densityRatio = density / (brushes.densityLimit * PER_CM2)
  const law = {
    wear: brushes.wear,
    speed: brushes.wearSpeed,
    current: brushes.wearCurrent,
    byCurrent: brushes.wearByCurrent,
  }
  const wear = brushWear(law, v, reading.currentRms)
  const life = brushLife(brushes.usableLength, wear)
  return {
    slidingSpeed: v,
    commutationTime: time,
    reactanceVoltage: reactance,
    transformerVoltage: transformer,
    index,
    density,
    densityRatio,
    grade: sparkGrade(index, densityRatio),
    frictionLoss: brushFrictionLoss(brushes.friction, brushes.springForce, v),
    contactLoss: brushContactLoss(reading.currentMean, motor.brushDrop),
    wear,
    life,
    lifeAgainstUsual: lifeAgainstUsual(life, motor.kind),
  }
}
