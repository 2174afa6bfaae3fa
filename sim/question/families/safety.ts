/** In which order a machine is opened. A question of the real machine, which the picture gives no leave to open. */
import type { Family, Level, Option, OrderFamily } from '../family.ts'

/** In the order in which they are done. */
const STEPS: readonly Option[] = [
  { id: 'unplug', text: 'Unplug it, and keep the plug in sight' },
  { id: 'wait', text: 'Wait, and measure that no voltage is left' },
  { id: 'cover', text: 'Take out the screws of the cover' },
  { id: 'heat', text: 'Look for parts that are still hot' },
  { id: 'mark', text: 'Mark how the wheels stand' },
  { id: 'lift', text: 'Lift out the wheels' },
]

/** The first three are always among the cards; these come with them, as words apart by a space. */
const OTHERS: Readonly<Record<Level, readonly string[]>> = {
  1: [''],
  2: ['heat', 'mark', 'lift', 'heat mark', 'heat lift', 'mark lift'],
  3: ['heat mark lift'],
}
const ALWAYS = 3

type Order = {
  readonly others: string
  /** Which of the orders they are laid out in; 0 would be the right one, which is never drawn. */
  readonly laid: number
}

const stepsOf = (others: string): readonly Option[] =>
  STEPS.filter(({ id }, i) => i < ALWAYS || others.split(' ').includes(id))

/** Orders of so many cards */
const orders = (count: number): number => (count < 2 ? 1 : count * orders(count - 1))

/** Order number `index` of them, counted from the one given: the first card by the highest place, and so on. */
function orderOf(steps: readonly Option[], index: number): readonly Option[] {
  if (steps.length === 0) return []
  const each = orders(steps.length - 1)
  const first = Math.floor(index / each) % steps.length
  const rest = steps.filter((_, i) => i !== first)
  return [steps[first]!, ...orderOf(rest, index % each)]
}

const isBefore = (order: readonly string[], first: string, second: string): boolean =>
  order.indexOf(first) < order.indexOf(second)

const openingOrder: OrderFamily<Order> = {
  kind: 'order',
  name: 'safe-order',
  title: 'Order of opening a machine',
  parameters: [
    { name: 'others', values: (level) => OTHERS[level] },
    {
      name: 'laid',
      values: (_, { others }) => Array.from({ length: orders(stepsOf(others).length) - 1 }, (__, i) => i + 1),
    },
  ],
  example: { others: '', laid: 3 },
  texts: [
    () =>
      'A mains machine has to be opened. Put these steps in order. Local rules and licensed practice come first.',
    () =>
      'In what order are these steps taken at a real machine? Where local rules or licensed practice say more, they come first.',
  ],
  cards: ({ others, laid }) => orderOf(stepsOf(others), laid),
  answer: ({ others }) => stepsOf(others).map(({ id }) => id),
  working: ({ others }) =>
    stepsOf(others)
      .map(({ text }, i) => `${i + 1} ${text}`)
      .join('; '),
  slips: [
    {
      cause: 'cover-first',
      fits: (_, order) =>
        order.at(-1) !== 'unplug' && (isBefore(order, 'cover', 'unplug') || isBefore(order, 'cover', 'wait')),
    },
    { cause: 'switch-is-enough', fits: (_, order) => order.at(-1) === 'unplug' },
  ],
  reasons: () => [
    'Before the cover comes off, nothing behind it may be live or charged.',
    'A machine that is switched off has no voltage in it.',
    'The screws take the longest, so they are done first.',
  ],
  watch: () => ({
    sight: 'supply chain',
    words: 'Go along the chain from the plug and find what stays live, and what keeps a charge.',
    turns: 0,
  }),
}

export const SAFETY: readonly Family[] = [openingOrder]
