/**
 * Which way the wheels turn. A sense is told with the place of the eye. The worm lies along z with its front end towards
 * the viewer and turns about +z when it is anticlockwise seen from the front; the wheels turn about +y when they are
 * anticlockwise seen from above.
 */
import { wheelSense } from '../../gear/wheel-motion.ts'
import type { ChoiceFamily, Family, StageGearing } from '../family.ts'

type Sense = 'clockwise' | 'anticlockwise'

type Worm = {
  readonly hand: 'right' | 'left'
  readonly sense: Sense
  readonly from: 'front' | 'motor end'
}
type Viewed = Worm & { readonly wheel: 'left' | 'right'; readonly view: 'above' | 'below' }

const SENSES_OF_TURNING: readonly Sense[] = ['clockwise', 'anticlockwise']

const sentenceCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const other = (sense: Sense): Sense => (sense === 'clockwise' ? 'anticlockwise' : 'clockwise')
const senseText = (about: number): Sense => (about > 0 ? 'anticlockwise' : 'clockwise')

/** Sense of the worm about +z */
const wormSense = ({ sense, from }: Worm): 1 | -1 =>
  (sense === 'anticlockwise') === (from === 'front') ? 1 : -1

/** The inner side of the left wheel faces +x; with a turn about +y it moves along -z, where the motor is. */
const movesToMotor = (worm: Worm): boolean => wheelSense('left', worm.hand) * wormSense(worm) > 0

const innerText = (worm: Worm): string => (movesToMotor(worm) ? 'to the motor' : 'away from the motor')

const wormText = ({ hand, sense, from }: Worm): string =>
  `a ${hand}-hand worm turns ${sense}, seen from the ${from}`

const gearingOf = (worm: Worm): StageGearing => ({ hand: worm.hand, sense: wormSense(worm) })

const quarterTurn = {
  top: 1,
  bottom: 4,
  counted: 'senses',
  words: 'The worm makes a quarter turn. Look where the inner side of each wheel moves.',
} as const

const hands = {
  name: 'hand',
  values: (level: number) => (level === 1 ? ['right'] : ['right', 'left']),
}
const senses = { name: 'sense', values: () => SENSES_OF_TURNING }
const ends = {
  name: 'from',
  values: (level: number) => (level === 1 ? ['front'] : ['front', 'motor end']),
}

const isTurnedRound = ({ from, view }: Viewed): boolean => from === 'motor end' || view === 'below'

const wheelSenseFamily: ChoiceFamily<Viewed> = {
  kind: 'choice',
  name: 'wheel-sense',
  title: 'Sense of a wheel',
  parameters: [
    hands,
    senses,
    ends,
    { name: 'wheel', values: () => ['left', 'right'] },
    { name: 'view', values: (level) => (level === 3 ? ['above', 'below'] : ['above']) },
  ],
  example: { hand: 'right', sense: 'anticlockwise', from: 'front', wheel: 'left', view: 'above' },
  texts: [
    (given) =>
      `${sentenceCase(wormText(given))}. Which way does the ${given.wheel} wheel turn, seen from ${given.view}?`,
    ({ hand, sense, from, wheel, view }) =>
      `Seen from the ${from}, a ${hand}-hand worm turns ${sense}. Seen from ${view}, how does it turn the ${wheel} wheel?`,
  ],
  options: ({ view }) =>
    SENSES_OF_TURNING.map((sense) => ({ id: sense, text: `${sentenceCase(sense)}, seen from ${view}` })),
  answer: (given) => {
    const above = wheelSense(given.wheel, given.hand) * wormSense(given)
    return senseText(given.view === 'above' ? above : -above)
  },
  working: (given) =>
    `Inner sides move ${innerText(given)}, so the ${given.wheel} wheel turns ${wheelSenseFamily.answer(given)}, seen from ${given.view}`,
  slips: [
    {
      cause: 'view-not-turned',
      option: (given) => (isTurnedRound(given) ? other(turned(given)) : null),
    },
    { cause: 'other-wheel', option: (given) => other(turned(given)) },
    { cause: 'other-hand', option: (given) => other(turned(given)) },
    { cause: 'same-as-worm', option: ({ sense }) => sense },
  ],
  reasons: (given) => [
    `The worm moves the inner side of the wheel ${innerText(given)}.`,
    'A wheel turns in the same sense as the worm that drives it.',
    'One worm turns both wheels in the same sense.',
  ],
  watch: ({ wheel, view }) => ({
    sight: view === 'above' ? 'teeth' : 'underside',
    words: `Watch from ${view} which way the inner side of the ${wheel} wheel moves.`,
    turns: 0.25,
  }),
  gearing: gearingOf,
  trial: () => quarterTurn,
}

/** The wheel's sense as it is asked for. */
const turned = (given: Viewed): Sense => wheelSenseFamily.answer(given) as Sense

const INNER = { to: 'inner-to-motor', from: 'inner-from-motor' }
const bothOf = (sense: Sense): string => `both-${sense}`
const innerOf = (worm: Worm, toMotor: boolean): string =>
  movesToMotor(worm) === toMotor ? INNER.to : INNER.from

const pairSense: ChoiceFamily<Worm> = {
  kind: 'choice',
  name: 'pair-sense',
  title: 'Senses of both wheels',
  parameters: [hands, senses, ends],
  example: { hand: 'right', sense: 'anticlockwise', from: 'front' },
  texts: [
    (given) => `${sentenceCase(wormText(given))}. How do the two wheels turn?`,
    ({ hand, sense, from }) =>
      `Seen from the ${from}, a ${hand}-hand worm turns ${sense} between the two wheels. What do the wheels do?`,
  ],
  options: () => [
    { id: INNER.to, text: 'Inner sides to the motor, so opposite ways' },
    { id: INNER.from, text: 'Inner sides away from the motor, so opposite ways' },
    ...SENSES_OF_TURNING.map((sense) => ({ id: bothOf(sense), text: `Both ${sense}, seen from above` })),
  ],
  answer: (given) => innerOf(given, true),
  working: (given) =>
    `Both inner sides move ${innerText(given)}: seen from above, left wheel ${senseText(wheelSense('left', given.hand) * wormSense(given))}, right wheel ${senseText(wheelSense('right', given.hand) * wormSense(given))}`,
  slips: [
    { cause: 'same-way', option: ({ sense }) => bothOf(sense) },
    { cause: 'same-way-2', option: ({ sense }) => bothOf(other(sense)) },
    { cause: 'other-hand', option: (given) => innerOf(given, false) },
  ],
  reasons: () => [
    'The worm moves the teeth on both sides of it the same way along its axis.',
    'One worm turns both wheels in the same sense.',
    'The left wheel turns the right one, as two spur wheels do.',
  ],
  watch: () => ({
    sight: 'teeth',
    words: 'Watch the teeth on both sides of the worm, where they meet the thread.',
    turns: 0.25,
  }),
  gearing: gearingOf,
  trial: () => quarterTurn,
}

export const SENSES: readonly Family[] = [wheelSenseFamily, pairSense]
