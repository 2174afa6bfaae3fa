/**
 * The state of the bench that the text of a link holds. What is read was written by anybody: whatever is wrong with
 * it comes back as problems.
 */
import { checkValue } from '../../sim/machine/check.ts'
import { checkFile } from '../../sim/machine/file.ts'
import { readJson } from '../../sim/machine/json.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { Problem } from '../../sim/machine/problem.ts'
import { told } from '../../sim/machine/told.ts'
import { DEMO_MACHINES } from './demo-machines.ts'
import { type Differences, type Json, isBranch, isSame, withDifferences } from './difference.ts'
import { askingRules, benchRules, momentRules, pictureRules } from './link-rules.ts'
import { type LinkState, plainState } from './link-state.ts'
import { machineOfVersion } from './older-links.ts'
import { readPart, unknownPart } from './part.ts'
import { unpackText } from './unpack-text.ts'
import { LINK_VERSION, isPlainLink } from './plain-link.ts'
import { MOST_LINK, fingerprint } from './write-link.ts'

/** A machine of version 1 had another look; from then on a demo machine stays what it is. */
const FIRST_WITH_TEETH = 1
const VERSIONS: readonly number[] = [1, 2, LINK_VERSION]

/** As it is written: `set` holds by path what differs from the demo machine in plain settings. */
interface Written {
  readonly v: number
  readonly base: string
  /** Fingerprint of the demo machine; a plain link holds all of the machine and has none. */
  readonly of?: number
  readonly set: Differences
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
  const json = readJson(text)
  if ('fault' in json) return unreadable(`must hold JSON; column ${json.fault.column}: ${json.fault.message}`)
  const { value } = json
  if (!isBranch(value) || Array.isArray(value))
    return unreadable(`must hold a group of fields, got ${told(value)}`)
  const version = value['v']
  if (typeof version !== 'number' || !VERSIONS.includes(version))
    return unreadable(`must be of version ${VERSIONS.join(', ')}, got ${told(version)}`, 'v')
  if (!isBranch(value['set']) || Array.isArray(value['set']))
    return unreadable(`must be a group of what is set, got ${told(value['set'])}`, 'set')
  return value as unknown as Written
}

/** A machine is told about when it is wrong, or when something of it was left out; what is unusual in it is its own. */
function checkedMachine(given: Json, version: number, problems: Problem[]): Machine | null {
  const older = version < LINK_VERSION && isBranch(given)
  const { machine, problems: found } = older ? checkFile(given) : checkValue(given)
  const whole = isSame(given, machine && machineOfVersion(machine, version))
  problems.push(...found.filter(({ severity }) => severity === 'error' || (severity === 'warning' && !whole)))
  return machine
}

function stateIn(written: Written): ReadLink {
  const problems: Problem[] = []
  const demo = DEMO_MACHINES.find(({ id }) => id === written.base)
  if (!demo) return unreadable(`must be a demo machine, got ${told(written.base)}`, 'base')
  const base = machineOfVersion(demo.machine, written.v)
  if (written.of !== undefined && written.of !== fingerprint(base)) {
    const message = `must be ${demo.machine.name} as it is now, but that has changed since the link was made`
    problems.push({ path: 'base', severity: 'warning', message })
  }
  const { value, aside } = withDifferences({ ...plainState(demo.machine), machine: base }, written.set)
  for (const path of aside) problems.push(unknownPart(path, written.set[path]))
  for (const key of Object.keys(written).filter((each) => !['v', 'base', 'of', 'set'].includes(each)))
    problems.push(unknownPart(key, written[key as keyof Written]))

  const given = value as unknown as Record<keyof LinkState, Json>
  const isDemo = written.v > FIRST_WITH_TEETH && isSame(given.machine, base)
  // A link that changes nothing of a demo machine shows it with all that is told of it today.
  const machine = isDemo ? demo.machine : checkedMachine(given.machine, written.v, problems)
  if (!machine) return { state: null, problems }

  const plain = plainState(machine)
  const { way, asked, lesson } = plain
  const asking = readPart(
    problems,
    '',
    { way: given.way, asked: given.asked, lesson: given.lesson },
    { plain: { way, asked, lesson }, rules: askingRules },
  )
  const state: LinkState = {
    machine,
    way: asking.way,
    bench: readPart(problems, 'bench', given.bench, { plain: plain.bench, rules: benchRules(machine) }),
    picture: readPart(problems, 'picture', given.picture, { plain: plain.picture, rules: pictureRules }),
    moment: readPart(problems, 'moment', given.moment, { plain: plain.moment, rules: momentRules }),
    asked: asking.asked,
    lesson: asking.lesson,
  }
  return { state, problems }
}

/** Reads what `writeLink` wrote; anything else, whatever it is, becomes problems. */
export function readLink(link: string, most = MOST_LINK): ReadLink {
  if (link.length > most) return unreadable(`must be at most ${most} characters, got ${link.length}`)
  const unpacked = isPlainLink(link) ? { text: link } : unpackText(link)
  if ('reason' in unpacked) return unreadable(unpacked.reason)
  const written = writtenIn(unpacked.text)
  return 'problems' in written ? written : stateIn(written)
}
