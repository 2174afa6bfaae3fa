/** What may stand in a link, setting by setting. */
import { TICKS_PER_TURN, type WormTurns } from '../../sim/drive/turns.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { type Bench, COLD, PACES, isReversible } from '../store/bench.ts'
import { type Camera, WAYS } from '../store/view.ts'
import type { LinkState, Picture, ViewName } from './link-state.ts'
import type { Rules } from './part.ts'

const within = (least: number, most: number) => (value: unknown) =>
  typeof value === 'number' && value >= least && value <= most
const wholeWithin = (least: number, most: number) => (value: unknown) =>
  Number.isSafeInteger(value) && (value as number) >= least && (value as number) <= most
const oneOf = (choices: readonly unknown[]) => ({
  accepts: (value: unknown) => choices.includes(value),
  requirement: `one of ${choices.join(', ')}`,
})
const yesOrNo = { accepts: (value: unknown) => typeof value === 'boolean', requirement: 'true or false' }
const choiceOf = (count: number) => ({
  accepts: wholeWithin(0, count - 1),
  requirement: `a whole number from 0 to ${count - 1} with this machine`,
})

const WARMEST = 400 // [degC]
const temperatureRule = (machine: Machine) =>
  machine.motor === null
    ? oneOf([COLD])
    : { accepts: within(-60, WARMEST), requirement: `a temperature from -60 to ${WARMEST} in °C` }

export const benchRules = (machine: Machine): Rules<Bench> => ({
  setting: choiceOf(machine.control.steps.length),
  pluggedIn: yesOrNo,
  sense: oneOf(isReversible(machine) ? [1, -1] : [1]),
  leftLoad: choiceOf(machine.outputs.loads.length),
  rightLoad: choiceOf(machine.outputs.loads.length),
  jammed: oneOf(['none', 'left', 'right']),
  winding: temperatureRule(machine),
  magnet: temperatureRule(machine),
  pace: oneOf(PACES),
})

const FARTHEST = 100_000
const isPoint = (value: unknown) =>
  Array.isArray(value) && value.length === 3 && value.every(within(-FARTHEST, FARTHEST))

function isCamera(value: unknown): boolean {
  if (value === null) return true
  if (typeof value !== 'object' || Object.keys(value).length !== 3) return false
  const { position, target, field } = value as Partial<Record<keyof Camera, unknown>>
  return isPoint(position) && isPoint(target) && within(1, 170)(field)
}

const viewNames: Readonly<Record<ViewName, true>> = {
  gears: true,
  top: true,
  worm: true,
  mesh: true,
  motor: true,
  commutator: true,
  brushes: true,
  whole: true,
}

export const pictureRules: Rules<Picture> = {
  caseState: oneOf(['closed', 'clear', 'off']),
  motorCut: yesOrNo,
  apart: { accepts: within(0, 1), requirement: 'a number from 0 to 1' },
  view: oneOf(Object.keys(viewNames)),
  camera: { accepts: isCamera, requirement: 'null or position, target and field of a camera' },
  withoutLosses: yesOrNo,
  large: yesOrNo,
}

export const momentRules: Rules<WormTurns> = {
  turns: {
    accepts: wholeWithin(Number.MIN_SAFE_INTEGER, Number.MAX_SAFE_INTEGER),
    requirement: 'a whole number of turns',
  },
  ticks: {
    accepts: wholeWithin(0, TICKS_PER_TURN - 1),
    requirement: `a whole number from 0 to ${TICKS_PER_TURN - 1}`,
  },
  rest: {
    accepts: (value) => typeof value === 'number' && value >= 0 && value < 1,
    requirement: 'a number from 0 to below 1',
  },
}

const isGroup = (value: unknown, keys: readonly string[]): value is Record<string, unknown> =>
  typeof value === 'object' &&
  value !== null &&
  !Array.isArray(value) &&
  Object.keys(value).length === keys.length &&
  keys.every((key) => Object.hasOwn(value, key))

const isShortText = (value: unknown): boolean =>
  typeof value === 'string' && value.length > 0 && value.length <= LONGEST_NAME

const LONGEST_NAME = 80
const LARGEST_INDEX = 1_000_000
/** Questions of a set */
const MOST_ITEMS = 100

function isSetItem(value: unknown): boolean {
  if (!isGroup(value, ['family', 'index', 'level'])) return false
  const { family, index, level } = value
  return isShortText(family) && wholeWithin(0, LARGEST_INDEX)(index) && wholeWithin(1, 3)(level)
}

/** Whether the bank knows the families shows when they are asked. */
function isQuestionSet(value: unknown): boolean {
  if (value === null) return true
  const keys = ['bank', 'seed', 'items', 'at']
  if (!isGroup(value, keys) && !isGroup(value, [...keys, 'about'])) return false
  const { bank, seed, items, at, about = 'machine' } = value
  if (!Array.isArray(items) || items.length === 0 || items.length > MOST_ITEMS) return false
  const isPlaced = wholeWithin(1, LARGEST_INDEX)(bank) && wholeWithin(0, items.length - 1)(at)
  return isPlaced && about === 'machine' && isShortText(seed) && items.every(isSetItem)
}

const isLessonPlace = (value: unknown): boolean =>
  value === null || (isGroup(value, ['id', 'beat']) && isShortText(value['id']) && isShortText(value['beat']))

export const askingRules: Rules<Pick<LinkState, 'way' | 'asked' | 'lesson'>> = {
  way: oneOf(WAYS.map((each) => each.way)),
  asked: {
    accepts: isQuestionSet,
    requirement: `null, or bank, seed, at most ${MOST_ITEMS} items of family, index and level, and at which of them`,
  },
  lesson: { accepts: isLessonPlace, requirement: 'null, or the id of a lesson and of a beat in it' },
}
