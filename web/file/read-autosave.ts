/** What the autosave kept last time. */
import type { Problem } from '../../sim/machine/problem.ts'
import { BENCH_KEY, keptBench } from './autosave.ts'
import type { LinkState } from './link-state.ts'
import { readLink } from './read-link.ts'
import { type Keeper, keep, kept } from './storage.ts'

const DAMAGED_KEY = 'counterturn.bench.damaged'
/** A machine with long names does not fit in a link, but is kept all the same. */
const MOST_KEPT = 200_000

export interface Autosaved {
  readonly state: LinkState | null
  readonly problems: readonly Problem[]
}

/**
 * What was kept last time. A text that cannot be read whole is put with the other damaged ones, one a line, before
 * the next save takes its place.
 */
export function readAutosave(keeper: Keeper | null): Autosaved {
  const text = keptBench(keeper)
  if (text === null) return { state: null, problems: [] }
  const { state, problems } = readLink(text, MOST_KEPT)
  if (problems.length === 0) return { state, problems }
  const damaged = kept(keeper, DAMAGED_KEY)?.split('\n') ?? []
  const { ok } = damaged.includes(text)
    ? { ok: true }
    : keep(keeper, DAMAGED_KEY, [...damaged, text].join('\n'))
  const message = ok
    ? `must be readable, but what this browser kept of the bench is not; it is still there as ${DAMAGED_KEY}`
    : 'must be readable, but what this browser kept of the bench is not, and there is no room to put it aside'
  return { state, problems: [{ path: BENCH_KEY, severity: 'warning', message }, ...problems] }
}
