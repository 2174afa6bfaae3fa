import type { BridgeCircuit } from '../electric/bridge-circuit.ts'
import type { ChopperCircuit } from '../electric/chopper.ts'
import type { Primary } from '../electric/transformer.ts'
import { wheelDrivingEfficiency, wormDrivingEfficiency } from '../gear/efficiency.ts'
import { lead } from '../gear/proportions.ts'
import type { Gearing, Load, Machine, PermanentMagnetMotor, Supply } from '../machine/machine.ts'
import { TURN } from '../quantity/constants.ts'
import { radians, radPerSecond } from '../quantity/convert.ts'
import { halfPlay } from './play.ts'
import type { Work } from './work.ts'
import { newWork } from './work.ts'

/** A machine made ready for the loop: SI, radians, derived once. Read-only but for the scratch in `work`. */
export interface Drive {
  readonly starts: number
  readonly teeth: number
  /** Turns of the worm for one turn of a wheel */
  readonly ratio: number
  /** 1 right-hand worm, -1 left-hand */
  readonly handSign: 1 | -1
  /** Half of what the worm can turn before a wheel follows it [turn] */
  readonly halfPlay: number
  /** Number of speed steps */
  readonly steps: number
  readonly supplyKind: Supply['kind']
  /** Why the electrical side is not computed, as a sentence for the person; null where it is. */
  readonly notComputed: string | null
  /** Worm shaft with everything fixed to it [kg m2] */
  readonly rotorInertia: number
  /** Constant loss [N m], viscous [N m s/rad], fan [N m s2/rad2] */
  readonly frictionTorque: number
  readonly viscousTorque: number
  readonly fanTorque: number
  /** Each wheel with its shaft [kg m2] */
  readonly wheelInertia: number
  /** [N m] */
  readonly bearingTorque: number
  /** Mesh efficiency, worm driving */
  readonly forwardEfficiency: number
  /** Mesh efficiency, wheel driving; at or below 0 it cannot */
  readonly backwardEfficiency: number
  /** Already in SI */
  readonly loads: readonly Load[]
  /** Emf and torque constant [V s/rad = N m/A]; 0 without a computed motor */
  readonly emfConstant: number
  /** [V] */
  readonly brushDrop: number
  /** At the socket or battery [V], [Hz]; 0 for a crank */
  readonly supplyVoltage: number
  readonly supplyFrequency: number
  /** One per step behind a rectifier, otherwise empty */
  readonly bridges: readonly BridgeCircuit[]
  /** One per bridge: the mains side of its transformer */
  readonly primaries: readonly Primary[]
  /** One per step behind a battery, otherwise empty */
  readonly choppers: readonly ChopperCircuit[]
  /** One per step of a crank, otherwise empty [rad/s] */
  readonly crankSpeeds: readonly number[]
  /** Largest slope of motor torque over speed [N m s/rad] */
  readonly motorSlope: number
  /** Inertia at the worm when the wheels drive [kg m2]; positive where the drive is computed */
  readonly leastInertia: number
  readonly work: Work
}

const KG_M2 = 1e-4 // of 1 kg cm2
const MILLI = 1e-3
const KILO = 1e3
const PER_CENT = 1e-2
/** Below 1 uH a winding's current follows its voltage at once, and no reading shows the difference. */
const LEAST_INDUCTANCE = 1e-6

type Electric = Pick<
  Drive,
  | 'notComputed'
  | 'emfConstant'
  | 'brushDrop'
  | 'supplyVoltage'
  | 'supplyFrequency'
  | 'bridges'
  | 'primaries'
  | 'choppers'
  | 'crankSpeeds'
>

const unpowered: Electric = {
  notComputed: null,
  emfConstant: 0,
  brushDrop: 0,
  supplyVoltage: 0,
  supplyFrequency: 0,
  bridges: [],
  primaries: [],
  choppers: [],
  crankSpeeds: [],
}

/** Throws on numbers that are not finite, which the checks of a machine never let through. */
export function compileDrive(machine: Machine): Drive {
  demandFinite(machine, '')
  const { gearing, rotor, outputs } = machine
  const { wormStarts: starts, wheelTeeth: teeth } = gearing
  const electric = compileElectric(machine)
  const mesh = compileMesh(gearing)
  const ratio = teeth / starts
  const rotorInertia = rotor.inertia * KG_M2
  const wheelInertia = outputs.wheelInertia * KG_M2
  const leastInertia = rotorInertia + (2 * Math.min(0, mesh.backwardEfficiency) * wheelInertia) / ratio ** 2
  return {
    ...electric,
    ...mesh,
    notComputed: electric.notComputed ?? paradox(leastInertia),
    starts,
    teeth,
    ratio,
    handSign: gearing.hand === 'right' ? (1 as const) : (-1 as const),
    halfPlay: halfPlay(gearing.backlash, lead(gearing.axialModule, starts)),
    steps: machine.control.steps.length,
    supplyKind: machine.supply.kind,
    rotorInertia,
    motorSlope: motorSlope(electric),
    leastInertia,
    frictionTorque: rotor.frictionTorque,
    viscousTorque: rotor.viscousTorque,
    fanTorque: rotor.fanTorque,
    wheelInertia,
    bearingTorque: outputs.bearingTorque,
    loads: outputs.loads,
    work: newWork(),
  }
}

function demandFinite(value: unknown, path: string): void {
  if (typeof value === 'number' && !Number.isFinite(value))
    throw new Error(`${path} must be finite, got ${value}`)
  if (typeof value !== 'object' || value === null) return
  for (const [key, inner] of Object.entries(value)) demandFinite(inner, path === '' ? key : `${path}.${key}`)
}

function compileMesh(gearing: Gearing): Pick<Drive, 'forwardEfficiency' | 'backwardEfficiency'> {
  const gamma = Math.atan(gearing.wormStarts / gearing.diameterQuotient)
  const alphaN = radians(gearing.pressureAngle)
  return {
    forwardEfficiency: wormDrivingEfficiency(gamma, alphaN, gearing.friction),
    backwardEfficiency: wheelDrivingEfficiency(gamma, alphaN, gearing.friction),
  }
}

function compileElectric(machine: Machine): Electric {
  const { supply, control, motor } = machine
  if (control.kind === 'crank' && supply.kind === 'crank')
    return { ...unpowered, crankSpeeds: control.steps.map((step) => radPerSecond(step.speed)) }
  if (control.kind === 'taps' && motor?.kind === 'permanent-magnet') return compileTaps(machine, motor)
  if (control.kind === 'chopper' && motor?.kind === 'permanent-magnet') return compileChopper(machine, motor)
  if (motor?.kind === 'universal')
    return {
      ...unpowered,
      notComputed: 'The current of a universal motor is not computed yet; turn the worm by hand.',
    }
  return unsupported
}

const unsupported: Electric = {
  ...unpowered,
  notComputed: 'This combination of supply, speed setting and motor is not computed; turn the worm by hand.',
}

function compileTaps(machine: Machine, motor: PermanentMagnetMotor): Electric {
  const { supply, transformer, rectifier, control } = machine
  if (supply.kind !== 'mains' || control.kind !== 'taps' || !transformer || !rectifier) return unsupported
  const primaries = control.steps.map((tap) => ({
    turnsRatio: transformer.primaryVoltage / tap.voltage,
    emf: (supply.voltage * tap.voltage) / transformer.primaryVoltage,
    coreCurrent: supply.voltage / (transformer.coreResistance * KILO),
    magnetisingCurrent: supply.voltage / (transformer.magnetisingReactance * KILO),
  }))
  return {
    ...unpowered,
    ...pickMotor(motor),
    supplyVoltage: supply.voltage,
    supplyFrequency: supply.frequency,
    primaries,
    bridges: control.steps.map((tap, step) => ({
      emfPeak: Math.SQRT2 * primaries[step]!.emf,
      angularFrequency: TURN * supply.frequency,
      sourceResistance: tap.resistance + supply.resistance / primaries[step]!.turnsRatio ** 2,
      sourceInductance: tap.inductance * MILLI,
      motorResistance: motor.resistance,
      motorInductance: windingInductance(motor),
      diodeDrops: 2 * rectifier.diodeDrop,
    })),
  }
}

function compileChopper(machine: Machine, motor: PermanentMagnetMotor): Electric {
  const { supply, control } = machine
  if (supply.kind !== 'battery' || control.kind !== 'chopper') return unsupported
  return {
    ...unpowered,
    ...pickMotor(motor),
    supplyVoltage: supply.voltage,
    choppers: control.steps.map((step) => ({
      voltage: supply.voltage,
      sourceResistance: supply.resistance,
      motorResistance: motor.resistance,
      motorInductance: windingInductance(motor),
      period: 1 / (control.frequency * KILO),
      duty: step.duty * PER_CENT,
      switchDrop: control.switchDrop,
      freewheelDrop: control.freewheelDrop,
    })),
  }
}

const pickMotor = (motor: PermanentMagnetMotor): Pick<Drive, 'emfConstant' | 'brushDrop'> => ({
  emfConstant: motor.emfConstant,
  brushDrop: motor.brushDrop,
})

const windingInductance = (motor: PermanentMagnetMotor): number =>
  Math.max(motor.inductance * MILLI, LEAST_INDUCTANCE)

/** No period mean of a current falls faster with the opposing voltage than through the winding alone. */
function motorSlope(electric: Electric): number {
  const circuit = electric.bridges[0] ?? electric.choppers[0]
  return circuit ? electric.emfConstant ** 2 / circuit.motorResistance : 0
}

/** The inertia must stay positive for the motion to be determined. */
const paradox = (leastInertia: number): string | null =>
  leastInertia > 0
    ? null
    : 'The mesh locks so strongly for wheels this heavy that rigid parts have no definite motion; ' +
      'make the wheels lighter.'
