/** Power at a turning shaft, and what is left of it after one stage behind another. */
import type { Family, NumberFamily } from '../family.ts'
import { radPerSecond } from '../../quantity/convert.ts'
import { numberText } from '../value-text.ts'
import { WHEEL_TORQUES } from './trade-values.ts'

type Shaft = { readonly T: number; readonly n: number; readonly wheels: number }

const WHOLE_SPEEDS = [60, 75, 90, 100, 120, 150, 180, 200, 240, 250, 300, 360, 400, 450, 500, 600]
const BROKEN_SPEEDS = [47.5, 62.5, 87.5, 112.5, 137.5, 162.5, 187.5, 212.5, 237.5, 262.5, 312.5, 412.5]

const powerShaft: NumberFamily<Shaft> = {
  kind: 'number',
  name: 'power-shaft',
  title: 'Power of a turning wheel',
  parameters: [
    { name: 'T', values: () => WHEEL_TORQUES },
    { name: 'n', values: (level) => (level === 3 ? BROKEN_SPEEDS : WHOLE_SPEEDS) },
    { name: 'wheels', values: (level) => (level === 1 ? [1] : [1, 2, 2]) },
  ],
  example: { T: 0.4, n: 250, wheels: 1 },
  texts: [
    ({ T, n, wheels }) =>
      wheels === 1
        ? `The left wheel turns at ${numberText(n)} r/min and gives its brush ${numberText(T)} N m. What power does this wheel give?`
        : `Both wheels turn at ${numberText(n)} r/min, and each gives its brush ${numberText(T)} N m. What power do the two wheels give together?`,
    ({ T, n, wheels }) =>
      wheels === 1
        ? `A brush takes ${numberText(T)} N m from its wheel at ${numberText(n)} r/min. How much power goes into this brush?`
        : `Each of the two brushes takes ${numberText(T)} N m from its wheel at ${numberText(n)} r/min. How much power goes into both brushes?`,
  ],
  unit: () => 'W',
  tolerance: 'r1',
  irrational: true,
  answer: ({ T, n, wheels }) => radPerSecond(n) * T * wheels,
  working: ({ T, n, wheels }) =>
    `2π × ${numberText(n)} ÷ 60 × ${numberText(T)}${wheels === 1 ? '' : ` × ${numberText(wheels)}`}`,
  slips: [
    { cause: 'no-2pi', value: ({ T, n, wheels }) => (n / 60) * T * wheels },
    { cause: 'no-60', value: ({ T, n, wheels }) => 2 * Math.PI * n * T * wheels },
    { cause: 'torque-times-rpm', value: ({ T, n, wheels }) => n * T * wheels },
    {
      cause: 'forgot-second',
      apart: true,
      value: ({ T, n, wheels }) => (wheels > 1 ? radPerSecond(n) * T : null),
    },
  ],
  reasons: () => [
    'Power is torque times the angle that is turned in a second.',
    'Power is force times speed, and a torque is a force.',
    'Power is torque alone; the speed only says how long it lasts.',
  ],
  watch: () => ({
    sight: 'power',
    words: 'Read torque, speed and power of the wheels at one setting after another.',
    turns: null,
  }),
}

type Asked = 'out' | 'each' | 'loss'
/** Stages from the wheels back: meshes, motor, rectifier, transformer; 1 where a stage is not there. */
type Chain = {
  readonly P: number
  readonly stages: number
  readonly e1: number
  readonly e2: number
  readonly e3: number
  readonly e4: number
  readonly ask: Asked
}

const STAGES = ['the transformer', 'the rectifier', 'the motor', 'each mesh']

/** Efficiencies in the order in which the power passes. */
const inOrder = ({ stages, e1, e2, e3, e4 }: Chain): readonly number[] => [e4, e3, e2, e1].slice(-stages)

const passedOn = (chain: Chain): number => inOrder(chain).reduce((part, e) => part * e, 1)

/** What is asked for, where this part of the power comes out. */
const asked = ({ P, ask }: Chain, part: number): number => {
  if (ask === 'loss') return P * (1 - part)
  return ask === 'each' ? (P * part) / 2 : P * part
}

/** "the motor 55 % and each mesh 60 %": stages with what each passes on, `verb` with the first. */
const listed = (chain: Chain, verb: string): string => {
  const names = STAGES.slice(-chain.stages)
  const parts = inOrder(chain).map((e, i) => `${names[i]!}${i === 0 ? verb : ''} ${numberText(100 * e)} %`)
  return `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)!}`
}

const ASK: Readonly<Record<Asked, string>> = {
  out: 'How much power reaches the two wheels together?',
  each: 'Both wheels are loaded equally. How much power reaches each wheel?',
  loss: 'How much power turns to heat on the way to the wheels?',
}

const product = (chain: Chain): string =>
  inOrder(chain)
    .map((e) => numberText(e))
    .join(' × ')

function chainWorking(chain: Chain): string {
  const P = numberText(chain.P)
  if (chain.ask === 'loss') return `${P} × (1 − ${product(chain)})`
  return `${P} × ${product(chain)}${chain.ask === 'each' ? ' ÷ 2' : ''}`
}

const powerChain: NumberFamily<Chain> = {
  kind: 'number',
  name: 'power-chain',
  title: 'Power through one stage after another',
  parameters: [
    { name: 'P', values: () => [20, 30, 40, 50, 60, 80, 100, 120, 150, 200, 250, 300, 400, 500] },
    { name: 'stages', values: (level) => (level === 1 ? [2] : level === 2 ? [3] : [3, 4]) },
    { name: 'e1', values: () => [0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75] },
    { name: 'e2', values: () => [0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8] },
    { name: 'e3', values: (_, { stages }) => (stages > 2 ? [0.85, 0.9, 0.92, 0.94, 0.96, 0.98] : [1]) },
    { name: 'e4', values: (_, { stages }) => (stages > 3 ? [0.8, 0.85, 0.88, 0.9, 0.92] : [1]) },
    {
      name: 'ask',
      values: (level) => (level === 1 ? ['out'] : level === 2 ? ['out', 'each'] : ['out', 'each', 'loss']),
    },
  ],
  example: { P: 50, stages: 2, e1: 0.5, e2: 0.6, e3: 1, e4: 1, ask: 'out' },
  texts: [
    (chain) =>
      `${numberText(chain.P)} W go in. Of the power that comes to it, ${listed(chain, ' passes on')}; nothing else is lost. ${ASK[chain.ask]}`,
    (chain) =>
      `On the way to the wheels the efficiencies are these: ${listed(chain, '')}. The first of them takes in ${numberText(chain.P)} W. ${ASK[chain.ask]}`,
  ],
  unit: () => 'W',
  tolerance: 'r1',
  answer: (chain) => asked(chain, passedOn(chain)),
  working: chainWorking,
  slips: [
    {
      cause: 'losses-added',
      apart: true,
      value: (chain) =>
        asked(
          chain,
          inOrder(chain).reduce((part, e) => part - (1 - e), 1),
        ),
    },
    {
      cause: 'averaged',
      value: (chain) => asked(chain, inOrder(chain).reduce((sum, e) => sum + e, 0) / chain.stages),
    },
    { cause: 'last-stage', value: (chain) => asked(chain, chain.e1) },
    {
      cause: 'loss-for-output',
      value: (chain) => (chain.ask === 'loss' ? null : chain.P * (1 - passedOn(chain))),
    },
    { cause: 'output-for-loss', value: (chain) => (chain.ask === 'loss' ? chain.P * passedOn(chain) : null) },
    { cause: 'forgot-second', value: (chain) => (chain.ask === 'each' ? chain.P * passedOn(chain) : null) },
  ],
  reasons: () => [
    'Each stage takes its part of what the stage before it left over.',
    'Each stage takes its part of the power that goes in at the start.',
    'The worst stage alone decides what comes out.',
  ],
  watch: () => ({
    sight: 'supply chain',
    words: 'Follow the width of the power path from place to place.',
    turns: null,
  }),
}

export const POWER: readonly Family[] = [powerShaft, powerChain]
