/**
 * The state of the bench as the text of a link, and back, to the last bit.
 * State -> what differs from a demo machine in plain settings -> JSON -> packed text. What is read was written by
 * anybody: whatever is wrong with it comes back as problems.
 */
import { parseMachine } from '../../sim/machine/file.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { type Problem, hasErrors } from '../../sim/machine/problem.ts'
import { DEMO_MACHINES } from './demo-machines.ts'
import {
  type Differences,
  type Json,
  differencesBetween,
  holds,
  isBranch,
  jsonText,
  nesting,
  withDifferences,
} from './difference.ts'
import { type LinkState, benchRules, momentRules, pictureRules, plainState, wayRules } from './link-state.ts'
import { checksum, packText, unpackText } from './packed-text.ts'
import { readPart, shown, unknownPart } from './part.ts'

const LINK_VERSION = 1
/** Characters of a link that are read, and that can still be pasted anywhere. */
export const MOST_LINK = 4000
/** A machine has five levels; junk can be deep enough to exhaust whoever reads it level by level. */
const MOST_NESTING = 16

/** Tells a demo machine from the same one with other numbers, should it be corrected one day. */
const fingerprint = (machine: Machine): number =>
  checksum(new TextEncoder().encode(jsonText(machine as unknown as Json)))

/** As it is written: `set` holds by path what differs from the demo machine in plain settings. */
interface Written {
  readonly v: number
  readonly base: string
  readonly of: number
  readonly set: Differences
}

export function writeLink(state: LinkState): string {
  const options = DEMO_MACHINES.map(({ id, machine }) => {
    const set = differencesBetween(plainState(machine), state)
    return jsonText({ v: LINK_VERSION, base: id, of: fingerprint(machine), set })
  })
  return packText(options.reduce((best, each) => (each.length < best.length ? each : best)))
}

export interface ReadLink {
  /** Null when there is no usable machine in it. */
  readonly state: LinkState | null
  readonly problems: readonly Problem[]
}

const unreadable = (message: string, path = ''): ReadLink => ({
  state: null,
  problems: [{ path, severity: 'error', message }],
})

function writtenIn(text: string): Written | ReadLink {
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return unreadable('must hold JSON, got other text')
  }
  if (nesting(value) > MOST_NESTING) return unreadable(`must be at most ${MOST_NESTING} levels deep, got more`)
  if (!isBranch(value) || !holds(value, 'v')) return unreadable('must say its version, got none')
  if (value['v'] !== LINK_VERSION)
    return unreadable(`must be version ${LINK_VERSION}, got ${shown(value['v'])}`, 'v')
  if (!isBranch(value['set']) || Array.isArray(value['set']))
    return unreadable('must list what is set', 'set')
  return value as unknown as Written
}

function stateIn(written: Written): ReadLink {
  const problems: Problem[] = []
  const demo = DEMO_MACHINES.find(({ id }) => id === written.base)
  if (!demo) return unreadable(`must be a demo machine, got ${shown(written.base)}`, 'base')
  if (written.of !== fingerprint(demo.machine)) {
    const message = `must be ${demo.machine.name} as it is now, but that has changed since the link was made`
    problems.push({ path: 'base', severity: 'warning', message })
  }
  const { value, aside } = withDifferences(plainState(demo.machine), written.set)
  for (const path of aside) problems.push(unknownPart(path, written.set[path]))
  for (const key of Object.keys(written).filter((each) => !['v', 'base', 'of', 'set'].includes(each)))
    problems.push(unknownPart(key, written[key as keyof Written]))

  const given = value as unknown as Record<keyof LinkState, Json>
  const { machine, problems: inMachine } = parseMachine(jsonText(given.machine))
  problems.push(...inMachine.filter(({ severity }) => severity !== 'note'))
  if (!machine || hasErrors(inMachine)) return { state: null, problems }

  const plain = plainState(machine)
  const way = { way: given.way }
  const state: LinkState = {
    machine,
    ...readPart(problems, '', way, { plain: { way: plain.way }, rules: wayRules }),
    bench: readPart(problems, 'bench', given.bench, { plain: plain.bench, rules: benchRules(machine) }),
    picture: readPart(problems, 'picture', given.picture, { plain: plain.picture, rules: pictureRules }),
    moment: readPart(problems, 'moment', given.moment, { plain: plain.moment, rules: momentRules }),
  }
  return { state, problems }
}

/** Reads what `writeLink` wrote; anything else, whatever it is, becomes problems. */
export function readLink(link: string, most = MOST_LINK): ReadLink {
  if (link.length > most) return unreadable(`must be at most ${most} characters, got ${link.length}`)
  const unpacked = unpackText(link)
  if ('reason' in unpacked) return unreadable(unpacked.reason)
  const written = writtenIn(unpacked.text)
  return 'problems' in written ? written : stateIn(written)
}
