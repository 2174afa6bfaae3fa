import fc from 'fast-check'
import type { DriveInput } from '../../sim/drive/input.ts'
import { checkMachine } from '../../sim/machine/check.ts'
import type { Gearing, Load, Machine } from '../../sim/machine/machine.ts'
import type { Control } from '../../sim/machine/supply.ts'
import { hasErrors } from '../../sim/machine/problem.ts'
import { fittings } from './fittings.ts'
import { bootCleaner, cordWinder, demoMachines, ventOpener } from './machines.ts'

/** Around a demonstration value: half to double of it. */
const around = (value: number) => fc.double({ min: 0.5, max: 2, noNaN: true }).map((factor) => factor * value)
/** As above, and sometimes nothing at all. */
const aroundOrNone = (value: number) => fc.oneof({ weight: 5, arbitrary: around(value) }, fc.constant(0))
const whole = (min: number, max: number) => fc.integer({ min, max })

const arbitraryGearing: fc.Arbitrary<Gearing> = fc.record({
  profile: fc.constantFrom('ZA', 'ZN', 'ZI', 'ZK'),
  hand: fc.constantFrom('right', 'left'),
  wheelForm: fc.constant('throated'),
  depthRule: fc.constantFrom('axial', 'normal', 'mixed'),
  thinned: fc.constantFrom('worm', 'wheel'),
  wormStarts: whole(1, 4),
  wheelTeeth: whole(16, 60),
  axialModule: fc.constantFrom(1.25, 2, 4),
  diameterQuotient: whole(8, 16),
  pressureAngle: fc.constantFrom(14.5, 20, 25),
  friction: fc.double({ min: 0, max: 0.25, noNaN: true }),
  wheelWidth: whole(8, 24),
  addendum: fc.constant(1),
  clearance: fc.constantFrom(0.2, 0.25),
  backlash: fc.constantFrom(0, 0.05),
  boreDiameter: fc.constant(6),
  discDiameter: fc.constant(120),
  centres: fc.record({
    kind: fc.constant('shift'),
    profileShift: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
  }),
})

/** A load that also pulls, either way, about as strongly as the friction of the demonstration load. */
const arbitraryLoad = (load: Load): fc.Arbitrary<Load> =>
  fc.record({
    name: fc.constant(load.name),
    active: fc.double({ min: -1, max: 1, noNaN: true }).map((part) => part * (load.active + load.passive)),
    passive: aroundOrNone(load.passive),
    linear: aroundOrNone(load.linear),
    quadratic: aroundOrNone(load.quadratic),
  })

/** Valid machines around one demonstration machine, with any teeth, starts, hand, friction and loads. */
const machineAround = (demo: Machine): fc.Arbitrary<Machine> =>
  fc
    .record({
      gearing: arbitraryGearing,
      voltage: around(1),
      resistance: around(1),
      inductance: around(1),
      inertia: around(demo.rotor.inertia),
      frictionTorque: aroundOrNone(demo.rotor.frictionTorque),
      fanTorque: aroundOrNone(demo.rotor.fanTorque),
      breakaway: fc.oneof(fc.constant(1), fc.double({ min: 1, max: 2, noNaN: true })),
      bearingTorque: aroundOrNone(demo.outputs.bearingTorque),
      light: arbitraryLoad(demo.outputs.loads[0]!),
      heavy: arbitraryLoad(demo.outputs.loads[1] ?? demo.outputs.loads[0]!),
    })
    .map((own) => ({
      ...demo,
      gearing: own.gearing,
      supply:
        demo.supply.kind === 'crank'
          ? demo.supply
          : { ...demo.supply, voltage: demo.supply.voltage * own.voltage },
      motor: demo.motor && {
        ...demo.motor,
        resistance: demo.motor.resistance * own.resistance,
        inductance: demo.motor.inductance * own.inductance,
      },
      rotor: {
        ...demo.rotor,
        inertia: own.inertia,
        frictionTorque: own.frictionTorque,
        fanTorque: own.fanTorque,
        breakaway: own.breakaway,
      },
      outputs: {
        ...demo.outputs,
        // Light enough that a locking mesh keeps a definite motion: see the paradox of rigid self-locking.
        wheelInertia: demo.rotor.inertia,
        bearingTorque: own.bearingTorque,
        loads: [own.light, own.heavy],
      },
    }))

/** The same with another supply circuit too: setting, drops, emf constant, capacitor. */
const withCircuit = (drawn: fc.Arbitrary<Machine>): fc.Arbitrary<Machine> =>
  fc
    .record({
      machine: drawn,
      tap: around(1),
      drop: around(1),
      emf: around(1),
      hertz: around(1),
      duty: around(1),
    })
    .map(({ machine, tap, drop, emf, hertz, duty }) => ({
      ...machine,
      rectifier: machine.rectifier && {
        ...machine.rectifier,
        diodeDrop: machine.rectifier.diodeDrop * drop,
        capacitance: machine.rectifier.capacitance * tap,
      },
      motor: machine.motor && {
        ...machine.motor,
        emfConstant: machine.motor.emfConstant * emf,
        brushDrop: machine.motor.brushDrop * drop,
      },
      control: settingOf(machine.control, tap, hertz, duty),
    }))

function settingOf(control: Control, tap: number, hertz: number, duty: number): Control {
  switch (control.kind) {
    case 'taps':
      return {
        kind: 'taps',
        steps: control.steps.map(({ voltage, resistance, inductance }) => ({
          voltage: voltage * tap,
          resistance: resistance * duty,
          inductance: inductance * hertz,
        })),
      }
    case 'chopper':
      return {
        ...control,
        frequency: control.frequency * hertz,
        steps: control.steps.map((step) => ({ duty: Math.min(100, step.duty * duty) })),
      }
    case 'phase':
      return { ...control, steps: control.steps.map((step) => ({ angle: Math.min(175, step.angle * duty) })) }
    case 'half-wave':
    case 'crank':
      return control
  }
}

const valid = (machine: Machine): boolean => !hasErrors(checkMachine(machine))

const arbitraryMachine: fc.Arbitrary<Machine> = fc.oneof(...demoMachines.map(machineAround))

/** Input that the machine offers: a rectified supply knows one polarity. */
const arbitraryInput = (machine: Machine): fc.Arbitrary<DriveInput> =>
  fc.record({
    setting: whole(0, machine.control.steps.length - 1),
    connected: fc.oneof({ weight: 4, arbitrary: fc.constant(true) }, fc.constant(false)),
    sense: machine.supply.kind === 'mains' ? fc.constant(1 as const) : fc.constantFrom(1, -1),
    leftLoad: whole(0, 1),
    rightLoad: whole(0, 1),
    jammed: fc.constant('none' as const),
  })

/** A machine with an input that it offers. */
export const arbitraryRun: fc.Arbitrary<readonly [Machine, DriveInput]> = arbitraryMachine.chain((machine) =>
  arbitraryInput(machine).map((input) => [machine, input] as const),
)

/** A valid machine with a motor and a circuit that are computed, connected, with an input that it offers. */
export const arbitraryPoweredRun: fc.Arbitrary<readonly [Machine, DriveInput]> = fc
  .oneof(
    ...[bootCleaner, ventOpener, cordWinder].map((demo) => withCircuit(machineAround(demo)).filter(valid)),
  )
  .chain((machine) =>
    arbitraryInput(machine).map((input) => [machine, { ...input, connected: true }] as const),
  )

/** A valid machine of any electrical chain, connected or not, with an input that it offers. */
export const arbitraryFittedRun: fc.Arbitrary<readonly [Machine, DriveInput]> = fc
  .oneof(...fittings.map((machine) => withCircuit(machineAround(machine)).filter(valid)))
  .chain((machine) => arbitraryInput(machine).map((input) => [machine, input] as const))
