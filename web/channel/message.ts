/**
 * What the stage and the presenter window say to each other. The stage has the machine and the lesson; the presenter
 * window sends commands and is told. Whatever is malformed is no message.
 */
import { type Phase } from '../store/exercise.ts'
import type { LessonState } from '../store/lesson.ts'
import { PACES, type Bench } from '../store/bench.ts'
import type { Motion } from '../store/readout.ts'
import { POWER_STOPS, type PowerStop } from '../store/view.ts'
import { LONGEST_LESSON } from '../lesson/lesson-file.ts'
import { TICKS_PER_TURN } from '../../sim/drive/turns.ts'
import { type Read, group, listOf, number, oneOf, orNull, tableOf, text, whole, yesNo } from './readers.ts'

export const COMMANDS = [
  'next',
  'back',
  'goTo',
  'reveal',
  'cover',
  'large',
  'turn',
  'wormTurn',
  'wheelTurn',
  'zero',
  'close',
  'check',
  'spin',
  'tick',
] as const
export type Command = (typeof COMMANDS)[number]

/** Where the worm is, and all that its readings follow from. */
export interface Moment {
  readonly turns: number
  readonly ticks: number
  readonly rest: number
  readonly speed: number
  readonly acceleration: number
  readonly capacitorVoltage: number
  readonly fuse: number
  readonly isOpen: boolean
}

/** Where the lesson is, without its text. */
export interface Place {
  readonly beat: number
  readonly question: number
  readonly step: LessonState['step']
  readonly seen: readonly string[]
  /** How far each question has come, by the id of its beat and its place: 'turns/0' */
  readonly phases: Readonly<Record<string, Phase>>
  readonly lit: PowerStop | null
}

/** All of the stage that changes while a lesson runs. */
export interface Snapshot {
  readonly from: string
  /** Which lesson and which machine it is about: what was sent under these names */
  readonly run: string
  readonly stamp: number
  readonly mode: LessonState['mode']
  readonly place: Place
  readonly blank: boolean
  readonly large: boolean
  readonly withoutLosses: boolean
  readonly motion: Motion
  readonly moment: Moment
  readonly bench: Bench
  /** Whether the room check covers the stage */
  readonly checks: boolean
  readonly sound: Sound
}

/** Whether a tick can be heard: not tried yet, played, or held back by the browser until the stage is clicked. */
export type Sound = 'untried' | 'played' | 'blocked'

interface Bodies {
  /** The stage is there; `since` it was opened or took the lead [ms since 1970]. */
  readonly stage: {
    readonly from: string
    readonly since: number
    readonly leads: boolean
    readonly takes: boolean
  }
  readonly lesson: {
    readonly from: string
    readonly run: string
    readonly builtIn: boolean
    readonly text: string
  }
  readonly machine: { readonly from: string; readonly stamp: number; readonly text: string }
  readonly snapshot: Snapshot
  /** The stage goes: because its lesson was closed, or with its page. */
  readonly away: { readonly from: string; readonly closed: boolean }
  /** The presenter window is there, and may ask to be told everything. */
  readonly presenter: { readonly from: string; readonly asks: boolean }
  readonly command: {
    readonly from: string
    readonly to: string
    readonly command: Command
    readonly value: number
  }
  /** To a stage that was opened again: how far its lesson had come. */
  readonly resume: {
    readonly from: string
    readonly to: string
    readonly place: Place
    readonly moment: Moment
  }
}
export type Kind = keyof Bodies

export type Message = {
  readonly [K in Kind]: { readonly v: 1; readonly seq: number; readonly kind: K; readonly body: Bodies[K] }
}[Kind]
export type Body<K extends Kind> = Bodies[K]

const id = text(64)
const anyNumber = number(-Number.MAX_VALUE, Number.MAX_VALUE)
const LONGEST_MACHINE = 100_000

const moment: Read<Moment> = group<Moment>({
  turns: whole(-1e12, 1e12),
  ticks: whole(0, TICKS_PER_TURN - 1),
  rest: number(0, 1),
  speed: anyNumber,
  acceleration: anyNumber,
  capacitorVoltage: anyNumber,
  fuse: anyNumber,
  isOpen: yesNo,
})

const place: Read<Place> = group<Place>({
  beat: whole(0, 1000),
  question: whole(0, 1000),
  step: oneOf(['show', 'ask', 'count', 'reveal'] as const),
  seen: listOf(text(80), 1000),
  phases: tableOf(oneOf<Phase>(['predict', 'count', 'compare']), { most: 1000, longest: 80 }),
  lit: orNull(oneOf(POWER_STOPS)),
})

const bench: Read<Bench> = group<Bench>({
  setting: whole(0, 1000),
  pluggedIn: yesNo,
  sense: oneOf([1, -1] as const),
  leftLoad: whole(0, 1000),
  rightLoad: whole(0, 1000),
  jammed: oneOf(['none', 'left', 'right'] as const),
  winding: number(-273, 2000),
  magnet: number(-273, 2000),
  pace: oneOf<number>(PACES),
})

const snapshot: Read<Snapshot> = group<Snapshot>({
  from: id,
  run: id,
  stamp: whole(0, 1e9),
  mode: oneOf(['lead', 'alone'] as const),
  place,
  blank: yesNo,
  large: yesNo,
  withoutLosses: yesNo,
  motion: oneOf(['still', 'running', 'hand', 'dragged'] as const),
  moment,
  bench,
  checks: yesNo,
  sound: oneOf(['untried', 'played', 'blocked'] as const),
})

const BODIES: { readonly [K in Kind]: Read<Bodies[K]> } = {
  stage: group<Bodies['stage']>({ from: id, since: number(0, 1e15), leads: yesNo, takes: yesNo }),
  lesson: group<Bodies['lesson']>({ from: id, run: id, builtIn: yesNo, text: text(LONGEST_LESSON) }),
  machine: group<Bodies['machine']>({ from: id, stamp: whole(0, 1e9), text: text(LONGEST_MACHINE) }),
  snapshot,
  away: group<Bodies['away']>({ from: id, closed: yesNo }),
  presenter: group<Bodies['presenter']>({ from: id, asks: yesNo }),
  command: group<Bodies['command']>({ from: id, to: id, command: oneOf(COMMANDS), value: number(-1e6, 1e6) }),
  resume: group<Bodies['resume']>({ from: id, to: id, place, moment }),
}

const KINDS = Object.keys(BODIES) as Kind[]

const envelope = group<{ v: 1; seq: number; kind: Kind }>({
  v: oneOf([1] as const),
  seq: whole(0, Number.MAX_SAFE_INTEGER),
  kind: oneOf(KINDS),
})

const holder = (kind: Kind) => group<{ body: Bodies[Kind] }>({ body: BODIES[kind] })

/** The message in a value, as a clean copy; null where it is none. */
export function readMessage(value: unknown): Message | null {
  const outside = envelope(value)
  const inside = outside && holder(outside.kind)(value)
  return inside ? ({ ...outside, ...inside } as Message) : null
}
