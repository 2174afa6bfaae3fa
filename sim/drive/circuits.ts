import type { Chopper, Circuit, Source, Winding } from '../electric/circuit.ts'
import { magnetFactor, REFERENCE_TEMPERATURE, resistanceFactor } from '../heat/resistance.ts'
import type { Machine, Motor } from '../machine/machine.ts'
import type { Tap } from '../machine/supply.ts'
import { PER_CENT, TURN } from '../quantity/constants.ts'

/** How warm the motor is [degC]. */
export interface Warmth {
  readonly winding: number
  readonly magnet: number
}

/** At which a machine's description tells its numbers. */
export const DESCRIBED_WARMTH: Warmth = { winding: REFERENCE_TEMPERATURE, magnet: REFERENCE_TEMPERATURE }

const MICRO = 1e-6
const MILLI = 1e-3
const KILO = 1e3
/** Below 1 uH a winding's current follows its voltage at once, and no reading shows the difference. */
const LEAST_INDUCTANCE = 1e-6
/** A capacitor charges through no less than this time constant: its own leads, our choice. [s] */
const LEAST_CHARGING_TIME = 20e-6

/** One per step of the speed setting; none for a crank, and none for parts that do not go together. */
export function compileCircuits(machine: Machine, warmth: Warmth): readonly Circuit[] {
  const { supply, control, motor } = machine
  if (!motor || supply.kind === 'crank' || !goTogether(machine)) return []
  const winding = compileWinding(motor, machine.thermal?.magnetCoefficient ?? 0, warmth)
  return control.steps.map((_, step) => ({
    source: compileSource(machine, step),
    ...compileRectifier(machine, step),
    triac: compileTriac(machine, step),
    chopper: compileChopper(machine, step),
    winding,
  }))
}

/** What the rules of a machine let through, asked again because a machine may be compiled unchecked. */
function goTogether({ supply, transformer, rectifier, control, motor }: Machine): boolean {
  const isMagnet = motor?.kind === 'permanent-magnet'
  const onMains = supply.kind === 'mains'
  switch (control.kind) {
    case 'taps':
      return onMains && transformer !== null && rectifier !== null && isMagnet
    case 'chopper':
      return onMains ? rectifier !== null && rectifier.capacitance > 0 && isMagnet : rectifier === null
    case 'phase':
      return onMains && (rectifier !== null) === isMagnet && !(rectifier && rectifier.capacitance > 0)
    case 'half-wave':
      return onMains && rectifier === null && !(isMagnet && control.steps.some(({ waves }) => waves !== 1))
    case 'crank':
      return false
  }
}

/** Through how many turns of the primary each of this tap passes. */
export const turnsRatio = (machine: Machine, tap: Tap): number =>
  (machine.transformer?.primaryVoltage ?? tap.voltage) / tap.voltage

function compileSource(machine: Machine, step: number): Source {
  const { supply, control, rectifier } = machine
  if (supply.kind === 'crank') throw new Error('a crank has no electrical source')
  if (supply.kind === 'battery')
    return { emf: supply.voltage, angularFrequency: 0, resistance: supply.resistance, inductance: 0 }
  const tap = control.kind === 'taps' ? control.steps[step]! : null
  const ratio = tap ? turnsRatio(machine, tap) : 1
  const resistance = (tap?.resistance ?? 0) + supply.resistance / ratio ** 2
  const capacitance = (rectifier?.capacitance ?? 0) * MICRO
  const least = capacitance > 0 ? LEAST_CHARGING_TIME / capacitance : 0
  return {
    emf: (Math.SQRT2 * supply.voltage) / ratio,
    angularFrequency: TURN * supply.frequency,
    resistance: Math.max(resistance, least),
    inductance: (tap?.inductance ?? 0) * MILLI,
  }
}

type RectifierPart = Pick<Circuit, 'rectifier' | 'diodeDrops' | 'capacitance' | 'bleedResistance'>

function compileRectifier({ rectifier, control }: Machine, step: number): RectifierPart {
  if (rectifier)
    return {
      rectifier: 'bridge',
      diodeDrops: 2 * rectifier.diodeDrop,
      capacitance: rectifier.capacitance * MICRO,
      bleedResistance: rectifier.bleedResistance * KILO,
    }
  const unsmoothed = { capacitance: 0, bleedResistance: Infinity }
  if (control.kind !== 'half-wave' || control.steps[step]!.waves === 2)
    return { rectifier: 'none', diodeDrops: 0, ...unsmoothed }
  const kind = control.freewheel === 'diode' ? 'half-wave-freewheel' : 'half-wave'
  return { rectifier: kind, diodeDrops: control.diodeDrop, ...unsmoothed }
}

const compileTriac = ({ control }: Machine, step: number): Circuit['triac'] =>
  control.kind === 'phase'
    ? { firingAngle: (control.steps[step]!.angle * Math.PI) / 180, drop: control.switchDrop }
    : null

const compileChopper = ({ control, protection }: Machine, step: number): Chopper | null =>
  control.kind === 'chopper'
    ? {
        period: 1 / (control.frequency * KILO),
        duty: control.steps[step]!.duty * PER_CENT,
        switchDrop: control.switchDrop,
        freewheelDrop: control.freewheelDrop,
        currentLimit: protection.kind === 'limit' ? protection.current : Infinity,
      }
    : null

function compileWinding(motor: Motor, magnetCoefficient: number, warmth: Warmth): Winding {
  const resistance = motor.resistance * resistanceFactor(warmth.winding)
  const inductance = Math.max(motor.inductance * MILLI, LEAST_INDUCTANCE)
  const { brushDrop } = motor
  if (motor.kind === 'permanent-magnet') {
    const emfConstant = motor.emfConstant * magnetFactor(magnetCoefficient * PER_CENT, warmth.magnet)
    return { kind: 'permanent-magnet', emfConstant, resistance, inductance, brushDrop }
  }
  return {
    kind: 'universal',
    emfConstant: motor.emfConstant,
    saturationCurrent: motor.saturationCurrent,
    resistance,
    inductance,
    fieldInductance: motor.fieldInductance * MILLI,
    brushDrop,
  }
}
