/** How two loaded wheels push on the worm: along it both the same way, across it against each other. */
import type { Family, NumberFamily } from '../family.ts'
import { axialShare, type MeshComponents, meshComponents } from '../../gear/mesh-forces.ts'
import { leadAngle } from '../../gear/proportions.ts'
import { radians } from '../../quantity/convert.ts'
import { counted, numberText } from '../value-text.ts'
import { pressureAnglesAt, QUOTIENTS, startsAt, WHEEL_TORQUES } from './trade-values.ts'

type Loaded = { readonly T1: number; readonly T2: number; readonly d2: number }
type Along = Loaded & { readonly z2: number }
type Across = Loaded & { readonly z1: number; readonly q: number; readonly an: number }

const MM_PER_M = 1000
const DIAMETERS = [24, 30, 36, 40, 45, 48, 50, 60, 72, 75, 80, 90, 100, 120]
const BROKEN_DIAMETERS = [22.5, 27.5, 31.25, 37.5, 42.5, 47.5, 52.5, 62.5, 67.5, 87.5, 112.5]
const MODULES = [1, 1.25, 1.5, 2, 2.5, 3, 4]
const FEWEST_TEETH = 12
const MOST_TEETH = 60

/** Whole numbers of teeth that a wheel of this reference diameter [mm] has with a module of the trade. */
const teethOn = (d2: number): readonly number[] =>
  MODULES.map((m) => d2 / m).filter((z2) => Number.isInteger(z2) && z2 >= FEWEST_TEETH && z2 <= MOST_TEETH)

/** Force [N] round the wheel, and so along the worm, whatever the lead: torque over radius. */
const push = (T: number, d2: number): number => (2 * T * MM_PER_M) / d2

const loads = ({ T1, T2, d2 }: Loaded): string =>
  `The left wheel takes ${numberText(T1)} N m, the right wheel ${numberText(T2)} N m; both have a reference diameter of ${numberText(d2)} mm.`

const loadParameters: NumberFamily<Loaded>['parameters'] = [
  { name: 'T1', values: () => WHEEL_TORQUES },
  { name: 'T2', values: () => WHEEL_TORQUES },
  { name: 'd2', values: (level) => (level === 3 ? BROKEN_DIAMETERS : DIAMETERS) },
]

const thrustAxial: NumberFamily<Along> = {
  kind: 'number',
  name: 'thrust-axial',
  title: 'Push along the worm',
  parameters: [...loadParameters, { name: 'z2', values: (_, { d2 }) => teethOn(d2) }],
  example: { T1: 0.4, T2: 0.2, d2: 40, z2: 20 },
  texts: [
    (given) =>
      `${loads(given)} Each wheel has ${numberText(given.z2)} teeth. How hard is the worm pushed along its axis?`,
    ({ T1, T2, d2, z2 }) =>
      `A worm turns two wheels with ${numberText(z2)} teeth and a reference diameter of ${numberText(d2)} mm. One is loaded with ${numberText(T1)} N m, the other with ${numberText(T2)} N m. What force along the worm must its thrust bearing take?`,
  ],
  unit: () => 'N',
  tolerance: 'r1',
  answer: ({ T1, T2, d2 }) => push(T1, d2) + push(T2, d2),
  working: ({ T1, T2, d2 }) => `2 × (${numberText(T1)} + ${numberText(T2)}) ÷ ${numberText(d2 / MM_PER_M)}`,
  slips: [
    { cause: 'cancels', apart: true, value: ({ T1, T2, d2 }) => Math.abs(push(T1, d2) - push(T2, d2)) },
    { cause: 'one-wheel', value: ({ T1, d2 }) => push(T1, d2) },
    { cause: 'diameter-for-radius', value: ({ T1, T2, d2 }) => push(T1 + T2, d2) / 2 },
    { cause: 'teeth-for-diameter', value: ({ T1, T2, z2 }) => push(T1 + T2, z2) },
  ],
  reasons: () => [
    'The two inner sides move the same way along the worm, so both loads push it the same way.',
    'The wheels turn opposite ways, so their pushes take each other off.',
    'The worm passes torque on round its axis, so nothing pushes along it.',
  ],
  watch: () => ({
    sight: 'forces',
    words: 'Load one wheel, then both, and follow the arrows along the worm.',
    turns: null,
  }),
  gearing: ({ z2 }) => ({ wheelTeeth: z2 }),
}

/** Forces in the frictionless mesh of a wheel that takes T [N m]. */
function meshOf(T: number, { d2, z1, q, an }: Across): MeshComponents {
  const lead = leadAngle(z1, q)
  const alphaN = radians(an)
  const normal = push(T, d2) / axialShare(alphaN, lead, 0, 'worm')
  return meshComponents(normal, alphaN, lead, 0, 'worm')
}

/** Force [N] that parts worm and wheel in a mesh with this torque [N m]. */
const parting = (T: number, given: Across): number => meshOf(T, given).radial

const thrustRadial: NumberFamily<Across> = {
  kind: 'number',
  name: 'thrust-radial',
  title: 'Push across the worm',
  parameters: [
    ...loadParameters,
    { name: 'z1', values: startsAt },
    { name: 'q', values: () => QUOTIENTS },
    { name: 'an', values: pressureAnglesAt },
  ],
  example: { T1: 0.4, T2: 0.1, d2: 40, z1: 1, q: 10, an: 20 },
  texts: [
    (given) =>
      `${loads(given)} The worm between them has ${counted(given.z1, 'start')}, diameter quotient ${numberText(given.q)} and normal pressure angle ${numberText(given.an)}°. Without friction, how hard do the parting forces of both meshes together press the worm towards one of the wheels?`,
    ({ T1, T2, d2, z1, q, an }) =>
      `A worm with ${counted(z1, 'start')}, diameter quotient ${numberText(q)} and normal pressure angle ${numberText(an)}° stands between two wheels with a reference diameter of ${numberText(d2)} mm. One is loaded with ${numberText(T1)} N m, the other with ${numberText(T2)} N m; friction is left out. Each mesh parts its worm and wheel; what force is left on the worm along the line from wheel to wheel?`,
  ],
  unit: () => 'N',
  tolerance: 'r2',
  irrational: true,
  answer: (given) => Math.abs(parting(given.T1, given) - parting(given.T2, given)),
  working: ({ T1, T2, d2, z1, q, an }) =>
    `2 × |${numberText(T1)} − ${numberText(T2)}| ÷ ${numberText(d2 / MM_PER_M)} × tan ${numberText(an)}° ÷ cos(arctan(${numberText(z1)} ÷ ${numberText(q)}))`,
  slips: [
    {
      cause: 'radial-adds',
      apart: true,
      value: (given) => parting(given.T1, given) + parting(given.T2, given),
    },
    { cause: 'one-wheel', value: (given) => parting(given.T1, given) },
    { cause: 'no-pressure-angle', value: ({ T1, T2, d2 }) => Math.abs(push(T1, d2) - push(T2, d2)) },
  ],
  reasons: () => [
    'The wheels press on opposite sides of the worm, so only the difference of their loads is left.',
    'Both wheels press on the worm, so the two forces add up.',
    'The force that parts worm and wheel depends on the worm alone, so it is equal on both sides.',
  ],
  watch: () => ({
    sight: 'forces',
    words: 'Load one wheel, then both, and follow the arrows across the worm.',
    turns: null,
  }),
  gearing: ({ z1 }) => ({ wormStarts: z1 }),
}

export const THRUST: readonly Family[] = [thrustAxial, thrustRadial]
