/** The stage of a beat as a file gives it: every setting by its path against what this program can put on the stage. */
import { checkValue } from '../../sim/machine/check.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { told } from '../../sim/machine/told.ts'
import { stopsOf } from '../drive/powers-way.ts'
import { DEMO_MACHINES } from '../file/demo-machines.ts'
import { type Differences, type Json, withDifferences } from '../file/difference.ts'
import { benchRules, momentRules, pictureRules } from '../file/link-rules.ts'
import { type Rules, readPart } from '../file/part.ts'
import { PANEL_GROUPS } from '../panel/panels.ts'
import type { BeatStage } from '../store/lesson.ts'
import { type GearSigns, NO_SIGNS } from '../store/view.ts'
import { plainStage } from './beat-stage.ts'
import {
  type Group,
  type Reading,
  inside,
  listIn,
  oneIn,
  readGroup,
  refuse,
  valueIn,
  yesNoIn,
} from './read-parts.ts'

const PANELS = [...PANEL_GROUPS.flatMap(({ panels }) => panels), 'none'] as const
const SIGNS = Object.keys(NO_SIGNS) as (keyof GearSigns)[]
const MACHINES = DEMO_MACHINES.map(({ id }) => id)
const KNOWN = ['machine', 'set', 'panel', 'signs', 'lit', 'walk', 'motion']
const MOST_SETTINGS = 200

export interface CheckedStage {
  readonly stage: BeatStage
  /** As it stands on the stage; null when it cannot. */
  readonly machine: Machine | null
}

/** Whether every setting of a part is one that it may have. */
function checkPart<T extends object>(
  reading: Reading,
  path: string,
  given: unknown,
  { plain, rules }: { plain: T; rules: Rules<T> },
): void {
  const found: Reading['problems'] = []
  readPart(found, path, given, { plain, rules })
  for (const problem of found) reading.problems.push({ ...problem, severity: 'error' })
}

function checkMachine(reading: Reading, path: string, given: Json): Machine | null {
  const { machine, problems } = checkValue(given)
  for (const problem of problems)
    if (problem.severity === 'error')
      reading.problems.push({ ...problem, path: inside(path, `machine.${problem.path}`) })
  return machine
}

function checkSettings(reading: Reading, path: string, demo: Machine, set: Differences): Machine | null {
  const plain = plainStage(demo)
  const { value, aside } = withDifferences(plain, set)
  for (const each of aside) refuse(reading, inside(path, each), 'is no setting of the stage')
  const given = value as unknown as Record<keyof typeof plain, Json>
  const changed = Object.keys(set).some((each) => each === 'machine' || each.startsWith('machine.'))
  const machine = changed ? checkMachine(reading, path, given.machine) : demo
  const benchOf = machine ?? demo
  checkPart(reading, inside(path, 'bench'), given.bench, { plain: plain.bench, rules: benchRules(benchOf) })
  checkPart(reading, inside(path, 'picture'), given.picture, {
    plain: plain.picture,
    rules: {
      ...pictureRules,
      large: { accepts: (large) => large === false, requirement: 'false in a lesson' },
    },
  })
  checkPart(reading, inside(path, 'moment'), given.moment, { plain: plain.moment, rules: momentRules })
  return machine
}

function settingsIn(group: Group): Differences {
  const { value, path } = readGroup(
    group.reading,
    inside(group.path, 'set'),
    valueIn(group, 'set') ?? {},
    null,
  )
  const entries = Object.entries(value as object)
  if (entries.length <= MOST_SETTINGS) return Object.fromEntries(entries) as Differences
  refuse(group.reading, path, `must be at most ${MOST_SETTINGS} settings, got ${entries.length}`)
  return {}
}

export function checkStage(reading: Reading, path: string, value: unknown): CheckedStage {
  const group = readGroup(reading, path, value, KNOWN)
  const id = oneIn(group, 'machine', MACHINES)
  const demo = DEMO_MACHINES.find((each) => each.id === id) ?? DEMO_MACHINES[0]
  const set = settingsIn(group)
  const machine = checkSettings(reading, inside(path, 'set'), demo.machine, set)
  const stops = stopsOf(machine ?? demo.machine)
  const sign = (inner: Reading, at: string, each: unknown): keyof GearSigns => {
    const found = SIGNS.find((one) => one === each)
    if (!found) refuse(inner, at, `must be one of ${SIGNS.join(', ')}, got ${told(each)}`)
    return found ?? 'contact'
  }
  const stage: BeatStage = {
    machine: id,
    set,
    panel: oneIn(group, 'panel', PANELS, 'none'),
    signs: listIn(group, 'signs', { most: SIGNS.length, items: 'signs' }, sign),
    lit: valueIn(group, 'lit') === null ? null : oneIn<BeatStage['lit']>(group, 'lit', stops, null),
    walk: yesNoIn(group, 'walk'),
    motion: oneIn<BeatStage['motion']>(group, 'motion', ['still', 'running'], 'still'),
  }
  return { stage, machine }
}
