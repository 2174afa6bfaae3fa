import type { BridgeCircuit } from '../electric/bridge-circuit.ts'
import type { ChopperCircuit } from '../electric/chopper.ts'
import type { Circuit } from '../electric/circuit.ts'
import type { CycleTable } from '../electric/cycle-table.ts'
import type { Primary } from '../electric/transformer.ts'
import { wheelDrivingEfficiency, wormDrivingEfficiency } from '../gear/efficiency.ts'
import { lead } from '../gear/proportions.ts'
import type { Gearing, Load, Machine } from '../machine/machine.ts'
import type { Supply } from '../machine/supply.ts'
import { radians, radPerSecond } from '../quantity/convert.ts'
import type { CapacitorLink } from './capacitor-link.ts'
import { capacitorLinkOf } from './capacitor-link.ts'
import type { Warmth } from './circuits.ts'
import { compileCircuits, DESCRIBED_WARMTH, turnsRatio } from './circuits.ts'
import { bridgeOf, chopperOf, tableOf } from './closed-forms.ts'
import type { Melting } from './melting.ts'
import { compileMelting } from './melting.ts'
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
  /** Why the motion is not computed, as a sentence for the person; null where it is. */
  readonly notComputed: string | null
  /** Worm shaft with everything fixed to it [kg m2] */
  readonly rotorInertia: number
  /** Constant loss [N m], viscous [N m s/rad], fan [N m s2/rad2] */
  readonly frictionTorque: number
  readonly viscousTorque: number
  readonly fanTorque: number
  /** Dry friction at leaving standstill over that of running, >= 1 */
  readonly breakaway: number
  /** Each wheel with its shaft [kg m2] */
  readonly wheelInertia: number
  /** [N m] */
  readonly bearingTorque: number
  /** With what a jam holds its wheel [N m] */
  readonly jamTorque: number
  /** Mesh efficiency, worm driving */
  readonly forwardEfficiency: number
  /** Mesh efficiency, wheel driving; at or below 0 it cannot */
  readonly backwardEfficiency: number
  /** Already in SI */
  readonly loads: readonly Load[]
  /** At the socket or battery [V], [Hz]; 0 for a crank */
  readonly supplyVoltage: number
  readonly supplyFrequency: number
  /** One per step of a motor drive, otherwise empty: the whole electrical chain, as warm as the motor is */
  readonly circuits: readonly Circuit[]
  /** One per step each, null where the circuit is another: closed forms, and what is tabulated instead */
  readonly bridges: readonly (BridgeCircuit | null)[]
  readonly choppers: readonly (ChopperCircuit | null)[]
  readonly tables: readonly (CycleTable | null)[]
  /** One per step each, null without a smoothing capacitor */
  readonly capacitorLinks: readonly (CapacitorLink | null)[]
  /** One per step behind a transformer, otherwise empty: its mains side */
  readonly primaries: readonly Primary[]
  /** One per step of a crank, otherwise empty [rad/s] */
  readonly crankSpeeds: readonly number[]
  /** Fuse or overload switch */
  readonly melting: Melting | null
  /** Inertia at the worm when the wheels drive [kg m2]; positive where the drive is computed */
  readonly leastInertia: number
  readonly work: Work
}

const KG_M2 = 1e-4 // of 1 kg cm2
const KILO = 1e3
/** At which a reactance is described [Hz]; it goes with the frequency. */
const DESCRIBED_FREQUENCY = 50

/** Throws on numbers that are not finite, which the checks of a machine never let through. */
export function compileDrive(machine: Machine, warmth: Warmth = DESCRIBED_WARMTH): Drive {
  demandFinite(machine, '')
  const { gearing, rotor, outputs, supply } = machine
  const { wormStarts: starts, wheelTeeth: teeth } = gearing
  const mesh = compileMesh(gearing)
  const ratio = teeth / starts
  const rotorInertia = rotor.inertia * KG_M2
  const wheelInertia = outputs.wheelInertia * KG_M2
  const leastInertia = rotorInertia + (2 * Math.min(0, mesh.backwardEfficiency) * wheelInertia) / ratio ** 2
  const electric = compileElectric(machine, warmth)
  return {
    ...electric,
    ...mesh,
    notComputed: unsupported(electric) ?? paradox(leastInertia),
    starts,
    teeth,
    ratio,
    handSign: gearing.hand === 'right' ? (1 as const) : (-1 as const),
    halfPlay: halfPlay(gearing.backlash, lead(gearing.axialModule, starts)),
    steps: machine.control.steps.length,
    supplyKind: supply.kind,
    supplyVoltage: supply.kind === 'crank' ? 0 : supply.voltage,
    supplyFrequency: supply.kind === 'mains' ? supply.frequency : 0,
    rotorInertia,
    leastInertia,
    frictionTorque: rotor.frictionTorque,
    viscousTorque: rotor.viscousTorque,
    fanTorque: rotor.fanTorque,
    breakaway: rotor.breakaway,
    wheelInertia,
    bearingTorque: outputs.bearingTorque,
    jamTorque: outputs.jamTorque,
    loads: outputs.loads,
    melting: compileMelting(machine),
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

type Electric = Pick<
  Drive,
  'circuits' | 'bridges' | 'choppers' | 'tables' | 'capacitorLinks' | 'primaries' | 'crankSpeeds'
>

function compileElectric(machine: Machine, warmth: Warmth): Electric {
  const { supply, control } = machine
  const circuits = compileCircuits(machine, warmth)
  return {
    circuits,
    bridges: circuits.map(bridgeOf),
    choppers: circuits.map(chopperOf),
    tables: circuits.map(tableOf),
    capacitorLinks: circuits.map(capacitorLinkOf),
    primaries: circuits.length > 0 ? compilePrimaries(machine) : [],
    crankSpeeds:
      supply.kind === 'crank' && control.kind === 'crank'
        ? control.steps.map((step) => radPerSecond(step.speed))
        : [],
  }
}

function compilePrimaries(machine: Machine): readonly Primary[] {
  const { supply, transformer, control } = machine
  if (supply.kind !== 'mains' || !transformer || control.kind !== 'taps') return []
  return control.steps.map((tap) => ({
    turnsRatio: turnsRatio(machine, tap),
    emf: supply.voltage / turnsRatio(machine, tap),
    coreCurrent: supply.voltage / (transformer.coreResistance * KILO),
    magnetisingCurrent:
      (supply.voltage * DESCRIBED_FREQUENCY) / (transformer.magnetisingReactance * KILO * supply.frequency),
  }))
}

const unsupported = ({ circuits, crankSpeeds }: Electric): string | null =>
  circuits.length + crankSpeeds.length > 0
    ? null
    : 'This combination of supply, speed setting and motor is not computed; turn the worm by hand.'

/** The inertia must stay positive for the motion to be determined. */
const paradox = (leastInertia: number): string | null =>
  leastInertia > 0
    ? null
    : 'The mesh locks so strongly for wheels this heavy that rigid parts have no definite motion; ' +
      'make the wheels lighter.'
