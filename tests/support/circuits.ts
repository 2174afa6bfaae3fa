import type { Circuit } from '../../sim/electric/circuit.ts'

/** The circuits of the demo machines, written out, so that tests of the electrical side need no machine. */
const plain = { capacitance: 0, bleedResistance: Infinity, triac: null, chopper: null }

/** Boot cleaner, fifth tap */
export const boot: Circuit = {
  ...plain,
  source: {
    emf: 24 * Math.SQRT2,
    angularFrequency: 100 * Math.PI,
    resistance: 1.15,
    inductance: 0.4e-3,
  },
  rectifier: 'bridge',
  diodeDrops: 1.6,
  winding: {
    kind: 'permanent-magnet',
    emfConstant: 0.0432,
    resistance: 1.1,
    inductance: 2.2e-3,
    brushDrop: 1.6,
  },
}

/** Vent opener, first step */
export const vent: Circuit = {
  ...plain,
  source: { emf: 12.4, angularFrequency: 0, resistance: 0.08, inductance: 0 },
  rectifier: 'none',
  diodeDrops: 0,
  chopper: { period: 1 / 8000, duty: 0.4, switchDrop: 0.12, freewheelDrop: 0.45, currentLimit: Infinity },
  winding: {
    kind: 'permanent-magnet',
    emfConstant: 0.035,
    resistance: 1.4,
    inductance: 1.6e-3,
    brushDrop: 1,
  },
}

/** Cord winder, fifth step */
export const winder: Circuit = {
  ...plain,
  source: { emf: 230 * Math.SQRT2, angularFrequency: 100 * Math.PI, resistance: 0.4, inductance: 0 },
  rectifier: 'none',
  diodeDrops: 0,
  triac: { firingAngle: Math.PI / 3, drop: 1.2 },
  winding: {
    kind: 'universal',
    emfConstant: 0.12,
    saturationCurrent: 3,
    resistance: 17,
    inductance: 0.05,
    fieldInductance: 0.1,
    brushDrop: 2.4,
  },
}
