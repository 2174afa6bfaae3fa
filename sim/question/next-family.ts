/**
 * Which family comes next in practice, and why: spaced by what was right and what was not, never by chance. Equal gaps,
 * since growing ones were found to be no better: A. Latimier, H. Peyre and F. Ramus, A meta-analytic review of the
 * benefit of spacing out retrieval practice episodes on retention, Educ. Psychol. Rev. 33 (2021), 959.
 */
import type { Level } from './family.ts'
import type { Sureness } from './marking.ts'

/** An answer of this practice, oldest first. */
export interface Practised {
  readonly family: string
  readonly right: boolean
  readonly sureness: Sureness | null
}

export interface Next {
  readonly family: string
  readonly level: Level
  /** A sentence for the learner. */
  readonly why: string
}

/** Questions until a family is due again */
const AFTER_RIGHT = 7
const AFTER_WRONG = 4
const AFTER_SURE_AND_WRONG = 3
/** Right so often in a row raises the level */
const RAISES = 2
/** Right so often in a row settles a family */
export const SETTLED_AFTER = 3
const SUREST: Sureness = 3

/** How a family stands after the answers so far. */
interface Standing {
  readonly family: string
  /** Number of the question that it was last asked in, from 0 */
  readonly asked: number
  readonly due: number
  readonly level: Level
  /** Right answers in a row */
  readonly run: number
}

const raised = (level: Level): Level => (level === 1 ? 2 : 3)
const lowered = (level: Level): Level => (level === 3 ? 2 : 1)

/** A settled family is asked one level harder: a miss there leaves it where it was settled. */
function levelAfter({ level, run: before }: Pick<Standing, 'level' | 'run'>, run: number): Level {
  if (run === 0) return before >= SETTLED_AFTER ? level : lowered(level)
  return run === RAISES || run > SETTLED_AFTER ? raised(level) : level
}

const unmet = { level: 1, run: 0 } as const

function gapAfter({ right, sureness }: Practised): number {
  if (right) return AFTER_RIGHT
  return sureness === SUREST ? AFTER_SURE_AND_WRONG : AFTER_WRONG
}

/** Every family that was asked, in the order given. */
function standings(order: readonly string[], practised: readonly Practised[]): readonly Standing[] {
  const stands = new Map<string, Standing>()
  practised.forEach((answer, asked) => {
    const { family, right } = answer
    const last = stands.get(family) ?? unmet
    const run = right ? last.run + 1 : 0
    const level = levelAfter(last, run)
    stands.set(family, { family, asked, due: asked + gapAfter(answer), level, run })
  })
  return order.flatMap((family) => stands.get(family) ?? [])
}

/** The one that is due first; of equals the first in the order of learning. */
const earliest = (candidates: readonly Standing[]): Standing | undefined =>
  candidates.reduce<Standing | undefined>(
    (first, each) => (first === undefined || each.due < first.due ? each : first),
    undefined,
  )

const WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten']

function whyAgain({ asked, run }: Standing, now: number): string {
  const ago = now - asked
  const questions = WORDS[ago] ?? String(ago)
  return run === 0
    ? `Again, because you missed it ${questions} questions ago.`
    : `Again, because you had it right ${questions} questions ago: it should last.`
}

/** Once all is settled: the one that was asked longest ago, harder, until the hardest is settled too. */
function harder(settled: readonly Standing[]): Next | null {
  const easy = settled.filter(({ level }) => level < 3)
  const next = easy.reduce<Standing | undefined>(
    (first, each) => (first === undefined || each.asked < first.asked ? each : first),
    undefined,
  )
  return next
    ? { family: next.family, level: raised(next.level), why: 'All is settled: harder numbers now.' }
    : null
}

/** Null when every family is settled at the hardest level. `order` lists the families in the order of learning. */
export function nextFamily(order: readonly string[], practised: readonly Practised[]): Next | null {
  const now = practised.length
  const asked = standings(order, practised)
  const open = asked.filter(({ run }) => run < SETTLED_AFTER)
  const due = earliest(open.filter((each) => each.due <= now))
  if (due) return { family: due.family, level: due.level, why: whyAgain(due, now) }
  const fresh = order.find((family) => asked.every((each) => each.family !== family))
  if (fresh !== undefined) return { family: fresh, level: 1, why: 'New.' }
  const others = open.filter((each) => each.asked !== now - 1)
  const early = earliest(others) ?? open[0]
  if (early) return { family: early.family, level: early.level, why: 'Early: nothing else is due.' }
  return harder(asked)
}
