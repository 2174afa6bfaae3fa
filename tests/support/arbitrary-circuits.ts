import fc from 'fast-check'
import type { Chopper, Circuit, Source, Winding } from '../../sim/electric/circuit.ts'

/** Between two numbers above 0, even in their logarithm. */
const spread = (least: number, most: number): fc.Arbitrary<number> =>
  fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map(Math.exp)
const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true })

const magnet: fc.Arbitrary<Winding> = fc.record({
  kind: fc.constant('permanent-magnet' as const),
  emfConstant: spread(0.01, 0.2),
  resistance: spread(0.3, 5),
  inductance: spread(2e-4, 1e-2),
  brushDrop: between(0, 2),
})

const series: fc.Arbitrary<Winding> = fc.record({
  kind: fc.constant('universal' as const),
  emfConstant: spread(0.05, 0.2),
  saturationCurrent: fc.oneof(fc.constant(Infinity), spread(1, 10)),
  resistance: spread(4, 30),
  inductance: spread(0.01, 0.1),
  fieldInductance: spread(0.02, 0.2),
  brushDrop: between(0, 3),
})

const secondary: fc.Arbitrary<Source> = fc.record({
  emf: between(15, 55),
  angularFrequency: fc.constantFrom(100 * Math.PI, 120 * Math.PI),
  resistance: spread(0.05, 3),
  inductance: fc.oneof(fc.constant(0), spread(1e-4, 2e-3)),
})
const mains: fc.Arbitrary<Source> = fc.record({
  emf: fc.constant(230 * Math.SQRT2),
  angularFrequency: fc.constant(100 * Math.PI),
  resistance: spread(0.1, 2),
  inductance: fc.constant(0),
})
const battery = (most: number): fc.Arbitrary<Source> =>
  fc.record({
    emf: between(most / 5, most),
    angularFrequency: fc.constant(0),
    resistance: spread(0.02, 0.5),
    inductance: fc.constant(0),
  })

/** A source that resists nothing, which only a capacitor asks for */
const stiff = (source: fc.Arbitrary<Source>): fc.Arbitrary<Source> =>
  fc.oneof(
    { weight: 3, arbitrary: source },
    source.map((each) => ({ ...each, resistance: 0, inductance: 0 })),
  )

const triac = fc.record({
  firingAngle: between(0, Math.PI),
  drop: fc.oneof(fc.constant(0), between(0.5, 1.5)),
})
const chopper: fc.Arbitrary<Chopper> = fc.record({
  period: spread(5e-5, 1e-3),
  duty: fc.oneof({ weight: 4, arbitrary: between(0.05, 0.99) }, fc.constant(1)),
  switchDrop: between(0, 0.3),
  freewheelDrop: between(0.2, 0.8),
  currentLimit: fc.oneof(fc.constant(Infinity), spread(0.5, 8)),
})

const plain = {
  rectifier: fc.constant('none' as const),
  diodeDrops: fc.constant(0),
  capacitance: fc.constant(0),
  bleedResistance: fc.constant(Infinity),
  triac: fc.constant(null),
  chopper: fc.constant(null),
}
const bridge = { ...plain, rectifier: fc.constant('bridge' as const), diodeDrops: between(0.6, 2) }
const smooth = {
  ...bridge,
  capacitance: spread(1e-4, 1e-2),
  bleedResistance: fc.oneof(fc.constant(Infinity), spread(100, 1e5)),
}
const half = { ...bridge, rectifier: fc.constantFrom('half-wave' as const, 'half-wave-freewheel' as const) }

/** Every chain that a machine can have, by name. */
export const chains: Readonly<Record<string, fc.Arbitrary<Circuit>>> = {
  bridge: fc.record({ ...bridge, source: stiff(secondary), winding: magnet }),
  'bridge and capacitor': fc.record({ ...smooth, source: secondary, winding: magnet }),
  'triac ahead of a bridge': fc.record({ ...bridge, source: stiff(secondary), winding: magnet, triac }),
  'half wave': fc.record({ ...half, source: stiff(secondary), winding: magnet }),
  'series motor': fc.record({ ...plain, source: stiff(mains), winding: series }),
  'triac and series motor': fc.record({ ...plain, source: stiff(mains), winding: series, triac }),
  'half wave and series motor': fc.record({ ...half, source: stiff(mains), winding: series }),
  chopper: fc.record({ ...plain, source: stiff(battery(30)), winding: magnet, chopper }),
  'chopper and series motor': fc.record({ ...plain, source: battery(200), winding: series, chopper }),
  'chopper behind a capacitor': fc.record({ ...smooth, source: secondary, winding: magnet, chopper }),
}

/** Speed at which the emf of a motor is about what its source gives [rad/s]. */
export const ordinarySpeed = ({ source, winding }: Circuit): number =>
  winding.kind === 'permanent-magnet' ? source.emf / winding.emfConstant : 800
