/** Questions about one machine: its counts and its hand are given, the rest is drawn by the seed. */
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { BANK, FAMILIES, familyNamed } from '../../sim/question/bank.ts'
import { type Draw, drawFrom } from '../../sim/question/draw.ts'
import type { Family, Given } from '../../sim/question/family.ts'
import { questionWith } from '../../sim/question/instance.ts'
import type { Question } from '../../sim/question/question.ts'
import { type Wanted, sense } from './wanted.ts'

const MOST_DRAWS = 64

/** Parameters that a machine settles. */
const settledBy = ({ wormStarts, wheelTeeth, hand }: GearNumbers): Given => ({
  z1: wormStarts,
  z2: wheelTeeth,
  hand,
})

/** Families whose stage is nothing but the machine's counts and hand. */
export const MACHINE_FAMILIES: readonly Family[] = FAMILIES.filter(
  (family) =>
    family.gearing?.(family.example) &&
    family.parameters.some(({ name }) => name === 'z2' || name === 'hand'),
)

function drawn(family: Family, { level }: Wanted, settled: Given, draw: Draw): Given | null {
  const given: Record<string, number | string> = {}
  for (const parameter of family.parameters) {
    const choices = parameter.values(level, given)
    const value = settled[parameter.name] ?? choices[draw(choices.length)]
    if (value === undefined) return null
    given[parameter.name] = value
  }
  return family.accepts && !family.accepts(given, level) ? null : given
}

/** Null where the family asks nothing of such counts, or nothing that is not asked already. */
function questionAbout(wanted: Wanted, settled: Given, key: string, asked: Set<string>): Question | null {
  const family = familyNamed(wanted.family)
  if (!family) return null
  const draw = drawFrom(key)
  for (let i = 0; i < MOST_DRAWS; i++) {
    const given = drawn(family, wanted, settled, draw)
    if (!given) continue
    const question = questionWith(family, given)
    if (!asked.has(sense(question))) return question
  }
  return null
}

export function questionsAbout(
  gearing: GearNumbers,
  wanted: readonly Wanted[],
  seed: string,
): readonly Question[] {
  const settled = settledBy(gearing)
  const asked = new Set<string>()
  return wanted.flatMap((each, at) => {
    const question = questionAbout(each, settled, `${seed}|${each.family}|${at}|${BANK}`, asked)
    if (question) asked.add(sense(question))
    return question ?? []
  })
}
