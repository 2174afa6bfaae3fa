/** Steps that bring an older machine file up to this version. */
import { ownValue } from './path.ts'

/** One step from an older version of the file to the next; what it does not know it must leave as it is. */
export interface Migration {
  /** The version it reads; it gives the next. */
  readonly from: number
  /** What it changes, as in 'threads are called starts'. */
  readonly name: string
  readonly apply: (file: object) => object
}

const isGroup = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const numberIn = (group: unknown, key: string): number => {
  const value = ownValue(group, key)
  return typeof value === 'number' ? value : NaN
}

const rounded = (value: number): number =>
  Number.isFinite(value) ? Math.max(1, Math.round(2 * value) / 2) : 1

/** Key angle [deg] that puts the rows of both outputs half a pitch apart, as version 1 drew them. */
function keyAngleHalfway(z1: number, z2: number, rows: number): number {
  const farSide = (z1 + z2) % 2 === 0 ? 0 : 180 / z2
  const pitch = 360 / rows
  const angle = (180 / rows - farSide + 180) / 2
  const least = angle % (pitch / 2)
  return Number.isFinite(least) ? Math.round(1000 * least) / 1000 : 0
}

/** Values that version 1 had no fields for, as it drew them. */
export const TEETH_AND_ROWS: Migration = {
  from: 1,
  name: 'wheel form, tooth depth, backlash, bore, centre distance and the rows of the outputs were added',
  apply(file) {
    const gearing = ownValue(file, 'gearing')
    const outputs = ownValue(file, 'outputs')
    if (!isGroup(gearing) || !isGroup(outputs)) return file
    const m = numberIn(gearing, 'axialModule')
    const z2 = numberIn(gearing, 'wheelTeeth')
    const a = (m * (numberIn(gearing, 'diameterQuotient') + z2)) / 2
    return {
      ...file,
      gearing: {
        ...gearing,
        wheelForm: 'throated',
        depthRule: 'axial',
        thinned: 'worm',
        addendum: 1,
        clearance: 0.25,
        backlash: 0,
        boreDiameter: rounded(0.44 * m * (z2 / 2 - 1.25)),
        discDiameter: 120,
        centres: { kind: 'shift', profileShift: 0 },
      },
      outputs: {
        ...outputs,
        hubDiameter: rounded(0.36 * a),
        sweepDiameter: rounded(2.32 * a),
        tuftThickness: rounded(0.06 * a),
        keyAngle: keyAngleHalfway(numberIn(gearing, 'wormStarts'), z2, numberIn(outputs, 'tufts')),
        toothOffset: 0,
      },
    }
  },
}

/** What version 2 did not describe: it had no capacitor, and nothing was said of heat, brushes and fuses. */
export const HEAT_AND_PROTECTION: Migration = {
  from: 2,
  name: 'smoothing capacitor, breakaway, grip of a jam, heat, brushes and protection were added',
  apply(file) {
    const rectifier = ownValue(file, 'rectifier')
    const rotor = ownValue(file, 'rotor')
    const outputs = ownValue(file, 'outputs')
    if (!isGroup(rotor) || !isGroup(outputs)) return file
    return {
      ...file,
      ...(isGroup(rectifier) ? { rectifier: { ...rectifier, capacitance: 0, bleedResistance: 10 } } : {}),
      rotor: { ...rotor, breakaway: 1 },
      outputs: { ...outputs, jamTorque: 100 },
      thermal: null,
      brushes: null,
      protection: { kind: 'none' },
    }
  },
}
