/** Formulas of the worm pair: what follows from its numbers alone, and the forces in a mesh. */
import type { FormulaRow } from './formula.ts'
import { PI, call, fraction, magnitude, minus, product, root, sum } from './formula-tree.ts'
import type { Situation } from './situation.ts'
import { meshForce, threadSliding, wormThrust } from './worm-forces.ts'

const HANDBOOK =
  'R. G. Budynas and J. K. Nisbett, Shigley’s Mechanical Engineering Design, worm gearing, from memory.'
const DERIVED_BACK = 'The driving formula with the friction turned round; derived here.'
const TERMS = 'Names after ISO 1122-2, from memory; the equation is that of any gear handbook.'

const cosAlpha = call('cos', 'alphaN')
const sinAlpha = call('sin', 'alphaN')
const tanGamma = call('tan', 'gamma')
const cosGamma = call('cos', 'gamma')
const sinGamma = call('sin', 'gamma')

/** Flank force over axial force, with friction, worm driving. */
const flank = sum(product(cosAlpha, cosGamma), minus(product('mu', sinGamma)))
const DRIVING = 'Holds while the worm drives the wheel.'

const forces = (side: 'left' | 'right') => {
  const index = side === 'left' ? 'L' : 'R'
  const axial = fraction(side === 'left' ? 'T2L' : 'T2R', 'r2')
  const row = (force: 'axial' | 'tangential' | 'radial') =>
    ({
      unit: 'N',
      source: HANDBOOK,
      holds: DRIVING,
      reading: (situation: Situation) => meshForce(situation, side, force),
    }) as const
  return {
    axial: {
      ...row('axial'),
      title: `Axial force on the worm, ${side} mesh`,
      letter: 'F',
      index: `a${index}`,
      right: axial,
    },
    tangential: {
      ...row('tangential'),
      title: `Tangential force on the worm, ${side} mesh`,
      letter: 'F',
      index: `t${index}`,
      right: product(axial, fraction(sum(product(cosAlpha, sinGamma), product('mu', cosGamma)), flank)),
    },
    radial: {
      ...row('radial'),
      title: `Force that parts worm and wheel, ${side} mesh`,
      letter: 'F',
      index: `r${index}`,
      right: product(axial, fraction(sinAlpha, flank)),
    },
  } satisfies Record<string, FormulaRow>
}

const left = forces('left')
const right = forces('right')

export const GEAR_FORMULAS = {
  ratio: {
    title: 'Ratio, worm turns for one wheel turn',
    letter: 'i',
    unit: '',
    right: fraction('z2', 'z1'),
    source:
      'Each worm turn moves a wheel on by as many teeth as the worm has starts. ISO 1122-1, from memory.',
  },
  leadAngle: {
    title: 'Lead angle',
    letter: 'γ',
    unit: '°',
    right: call('arctan', fraction('z1', 'q')),
    source: TERMS,
  },
  meshEfficiency: {
    title: 'Efficiency of a mesh, worm driving',
    letter: 'η',
    unit: '%',
    right: product(
      100,
      fraction(sum(cosAlpha, minus(product('mu', tanGamma))), sum(cosAlpha, fraction('mu', tanGamma))),
    ),
    source: HANDBOOK,
  },
  backEfficiency: {
    title: 'Efficiency of a mesh, wheel driving',
    letter: 'η′',
    unit: '%',
    right: product(
      100,
      fraction(sum(cosAlpha, minus(fraction('mu', tanGamma))), sum(cosAlpha, product('mu', tanGamma))),
    ),
    source: DERIVED_BACK,
  },
  lockingFriction: {
    title: 'Friction from which the mesh locks itself',
    letter: 'μ',
    index: 'lock',
    unit: '',
    right: product(cosAlpha, tanGamma),
    source: 'Where the efficiency with the wheel driving comes down to zero. Shigley, from memory.',
  },
  wormDiameter: {
    title: 'Reference diameter of the worm',
    letter: 'd',
    index: '1',
    unit: 'mm',
    right: product('m', 'q'),
    source: TERMS,
  },
  wheelDiameter: {
    title: 'Reference diameter of a wheel',
    letter: 'd',
    index: '2',
    unit: 'mm',
    right: product('m', 'z2'),
    source: TERMS,
  },
  centreDistance: {
    title: 'Centre distance of worm and wheel',
    letter: 'a',
    unit: 'mm',
    right: fraction(sum('d1', 'd2'), 2),
    source: TERMS,
  },
  lead: {
    title: 'Lead, advance of the thread in one turn',
    letter: 'p',
    index: 'z',
    unit: 'mm',
    right: product('z1', PI, 'm'),
    source: TERMS,
  },
  fullWheelWidth: {
    title: 'Widest useful wheel, as far as the tip of the worm reaches',
    letter: 'b',
    index: '2',
    unit: 'mm',
    right: product(2, 'm', root(sum('q', 1))),
    source: 'Chord of the worm’s tip circle at its reference circle. Any gear handbook, from memory.',
  },
  wormPlay: {
    title: 'Lost motion of the worm, before a wheel follows',
    letter: 'φ',
    index: 'j',
    unit: '°',
    right: product(360, fraction('jx', product(PI, 'm', 'z1'))),
    source: 'The backlash over the lead. Any gear text, from memory.',
  },
  wheelPlay: {
    title: 'Lost motion of a wheel, with the worm held',
    letter: 'j',
    index: '2',
    unit: '°',
    right: product(360, fraction('jx', product(PI, 'd2'))),
    source: 'The backlash over the reference circle. Any gear text, from memory.',
  },
  slidingSpeed: {
    title: 'Sliding speed of thread on tooth at the pitch point',
    letter: 'v',
    index: 's',
    unit: 'm/s',
    right: fraction(product(magnitude('omega'), 'd1'), product(2000, cosGamma)),
    reading: threadSliding,
    source: HANDBOOK,
  },
  wormThrust: {
    title: 'Push along the worm, from both meshes',
    letter: 'F',
    index: 'a',
    unit: 'N',
    right: fraction(sum('T2L', 'T2R'), 'r2'),
    reading: wormThrust,
    source: 'Both wheels push the worm the same way along its axis, so their axial forces add up. Statics.',
  },
  leftAxialForce: left.axial,
  leftTangentialForce: left.tangential,
  leftRadialForce: left.radial,
  rightAxialForce: right.axial,
  rightTangentialForce: right.tangential,
  rightRadialForce: right.radial,
} satisfies Record<string, FormulaRow>
