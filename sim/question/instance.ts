/** A question from a family: by its key, or with parameters of one's own. */
import type { Machine } from '../machine/machine.ts'
import { BANK, familyNamed } from './bank.ts'
import { causeSentence } from './causes.ts'
import { type Draw, drawFrom } from './draw.ts'
import type { Family, Given, Level, NumberFamily } from './family.ts'
import { isClose, toleranceOf } from './marking.ts'
import type { Ask, AskNumber, Question, QuestionKey } from './question.ts'

/** Draws before the family's own example is asked. */
const MOST_DRAWS = 64
/** Tolerances by which a slip keeps away from the answer */
const AWAY = 3
/** Significant digits that a first question needs at most */
const FIRST_DIGITS = 5

export const keyText = ({ seed, family, index, bank }: QuestionKey): string =>
  `${seed}|${family}|${index}|${bank}`

type NumberSlips = AskNumber['slips']

/** Slips that apply, with what they lead to. Those that cannot be told from the answer or from an earlier one go. */
function numberSlips(family: NumberFamily, given: Given): NumberSlips {
  const answer = family.answer(given)
  const tolerance = toleranceOf(family.tolerance, answer)
  const kept: NumberSlips[number][] = []
  for (const slip of family.slips) {
    const value = slip.value(given)
    if (value === null || !Number.isFinite(value)) continue
    const taken = kept.some((each) => isClose(each.value, value, tolerance, 1))
    if (isClose(answer, value, tolerance, AWAY) || taken) continue
    kept.push({ cause: slip.cause, sentence: causeSentence(family.name, slip.cause, given), value })
  }
  return kept
}

/** Whether the slips that must stay apart do. */
function slipsApart(family: NumberFamily, given: Given): boolean {
  const answer = family.answer(given)
  const tolerance = toleranceOf(family.tolerance, answer)
  const values = family.slips.flatMap((slip) => (slip.apart ? (slip.value(given) ?? []) : []))
  return values.every(
    (value, i) =>
      !isClose(answer, value, tolerance, AWAY) &&
      values.slice(0, i).every((earlier) => !isClose(earlier, value, tolerance, 1)),
  )
}

const fewDigits = (value: number): boolean =>
  Math.abs(Number(value.toPrecision(FIRST_DIGITS)) - value) <= 1e-12 * Math.abs(value)

function isAsked(family: Family, given: Given, level: Level): boolean {
  if (family.accepts && !family.accepts(given, level)) return false
  if (family.kind !== 'number') return true
  const anyLength = level > 1 || family.irrational === true
  return slipsApart(family, given) && (anyLength || fewDigits(family.answer(given)))
}

/** `settled` - parameters that are not drawn. Null where no draw fits. */
function drawn(family: Family, level: Level, draw: Draw, settled: Given = {}): Given | null {
  for (let i = 0; i < MOST_DRAWS; i++) {
    const given: Record<string, number | string> = {}
    for (const parameter of family.parameters) {
      const values = parameter.values(level, given)
      const value = settled[parameter.name] ?? values[draw(values.length)]
      if (value === undefined)
        throw new Error(`${family.name}: nothing to draw for ${parameter.name} at level ${level}`)
      given[parameter.name] = value
    }
    if (isAsked(family, given, level)) return given
  }
  return null
}

function askOf(family: Family, given: Given): Ask {
  const sentence = (cause: string) => causeSentence(family.name, cause, given)
  if (family.kind === 'number') {
    const { tolerance } = family
    const slips = numberSlips(family, given)
    return { kind: 'number', unit: family.unit(given), tolerance, answer: family.answer(given), slips }
  }
  const { kind } = family
  if (kind === 'order') {
    const slips = family.slips.map((slip) => ({
      cause: slip.cause,
      sentence: sentence(slip.cause),
      fits: (order: readonly string[]) => slip.fits(given, order),
    }))
    return { kind, cards: family.cards(given), answer: family.answer(given), slips }
  }
  const answer = family.answer(given)
  const slips = family.slips.flatMap((slip) => {
    const option = slip.option(given)
    return option === null || option === answer
      ? []
      : { cause: slip.cause, sentence: sentence(slip.cause), option }
  })
  return { kind, options: family.options(given), answer, slips }
}

function questionOf(family: Family, given: Given, draw: Draw, key: QuestionKey | null): Question {
  const [right, ...wrong] = family.reasons(given)
  const place = draw(3)
  const reasons = wrong.map((text) => ({ text, right: false }))
  reasons.splice(place, 0, { text: right, right: true })
  const wording = family.texts[draw(family.texts.length)]!
  return {
    text: wording(given),
    ask: askOf(family, given),
    working: family.working(given),
    reasons,
    watch: family.watch(given),
    gearing: family.gearing?.(given) ?? null,
    trial: family.trial?.(given) ?? null,
    family: family.name,
    title: family.title,
    given,
    key,
  }
}

/** The question that a key asks; null when the bank has no such family, or is another one. */
export function questionFor(key: QuestionKey): Question | null {
  const family = familyNamed(key.family)
  if (!family || key.bank !== BANK) return null
  const draw = drawFrom(keyText(key))
  return questionOf(family, drawn(family, key.level, draw) ?? family.example, draw, key)
}

/** The same about one machine, whose counts and hand are not drawn; null too where the family asks nothing of them. */
export function questionAbout({ gearing }: Machine, key: QuestionKey): Question | null {
  const { wormStarts, wheelTeeth, hand } = gearing
  const family = familyNamed(key.family)
  if (!family || key.bank !== BANK) return null
  const draw = drawFrom(keyText(key))
  const given = drawn(family, key.level, draw, { z1: wormStarts, z2: wheelTeeth, hand })
  return given && questionOf(family, given, draw, null)
}

/** A question with parameters of one's own, always in the same words. */
export function questionWith(family: Family, given: Given): Question {
  return questionOf(family, given, drawFrom(`${family.name}|own`), null)
}
