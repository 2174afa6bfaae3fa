import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { operatingPoint } from '../../../sim/drive/operating-point.ts'
import { selfLocking, wheelDrivingEfficiency } from '../../../sim/gear/efficiency.ts'
import { leadAngle } from '../../../sim/gear/proportions.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { CLASS_TEMPERATURE } from '../../../sim/heat/insulation.ts'
import { radians } from '../../../sim/quantity/convert.ts'
import { settledHeat } from '../../../sim/run/heating-settled.ts'
import { DEMO_MACHINES } from '../../../web/file/demo-machines.ts'
import { stageState } from '../../../web/lesson/beat-stage.ts'
import { parseLesson, printLesson } from '../../../web/lesson/lesson-file.ts'
import { questionAt } from '../../../web/lesson/question-of.ts'
import { READY_LESSONS } from '../../../web/lesson/ready-lessons.ts'
import { LESSON_VERSION, type Beat, type Lesson } from '../../../web/store/lesson.ts'

const lessonOf = (id: string): Lesson => READY_LESSONS.find((each) => each.id === id)!
const BOOT = lessonOf('boot-cleaner')
const COUNTS = lessonOf('choosing-counts')

const text = (id: string) => readFileSync(`assets/lessons/${id}.json`, 'utf8')

test.each(['boot-cleaner', 'choosing-counts'])('%s reads without a problem and prints as it stands', (id) => {
  const { lesson, problems } = parseLesson(text(id))
  expect(problems).toEqual([])
  expect(lesson).toEqual(lessonOf(id))
  expect(printLesson(lessonOf(id))).toBe(text(id))
  expect(lesson?.counterturnLesson).toBe(LESSON_VERSION)
})

/** The plan of the two lessons: topics, minutes, and what each question is to bring out. */
test('the lessons are as long as they say', () => {
  const minutes = ({ beats }: Lesson) => beats.reduce((sum, beat) => sum + beat.minutes, 0)
  expect([BOOT.beats.length, minutes(BOOT)]).toEqual([14, 50])
  expect([COUNTS.beats.length, minutes(COUNTS)]).toEqual([12, 60])
  expect(BOOT.beats.flatMap(({ extra }, place) => (extra ? place + 1 : []))).toEqual([7, 9])
})

/** [topic, question, answer, digits after the point]; a choice by its words, or by the words of its option. */
type Row = readonly [number, number, number | string, number?]
const BOOT_ANSWERS: readonly Row[] = [
  [1, 1, 'One'],
  [2, 1, 'unplug,wait,cover'],
  [3, 1, 'It lies within the limits'],
  [3, 2, 100, 0],
  [4, 1, 'Inner sides to the motor, so opposite ways'],
  [5, 1, 20, 0],
  [6, 1, 5, 0],
  [6, 2, 10, 0],
  [7, 1, 'Clockwise, seen from below'],
  [8, 1, 252.55, 2],
  [8, 2, 23.5, 1],
  [9, 1, 1451, 0],
  [10, 1, 0.389, 3],
  [11, 1, 0.109, 3],
  [11, 2, 'It rises to nearly four times as much'],
  [11, 3, 'Both turn equally fast, with unequal torques'],
  [12, 1, 30.4, 1],
  [12, 2, 'Across the worm they cancel, along it they add'],
  [13, 1, 18, 0],
  [13, 2, 9, 0],
  [14, 1, 'It agrees'],
  [14, 2, 'Hardly: nearly all of the push is lost in the mesh'],
]
const COUNTS_ANSWERS: readonly Row[] = [
  [2, 1, 20, 0],
  [3, 1, 60, 0],
  [4, 1, 1.2, 1],
  [5, 1, 50.6, 1],
  [5, 2, 66.3, 1],
  [5, 3, 73.6, 1],
  [6, 1, 0.0791, 4],
  [6, 2, 0.0603, 4],
  [7, 1, 0.094, 4],
  [7, 2, 0.188, 3],
  [7, 3, 'The mesh gives way: the wheel turns the worm.'],
  [8, 1, 20, 0],
  [8, 2, 31, 0],
  [9, 1, 'They are not undercut, but handbooks advise one more'],
  [10, 1, 40, 0],
  [10, 2, 0, 0],
  [10, 3, 5.9, 1],
  [11, 1, 11.5, 1],
]

function answerAt(lesson: Lesson, topic: number, place: number): number | string {
  const ask = questionAt(lesson, topic - 1, place - 1)?.ask
  if (!ask || ask.kind === 'words') throw new Error(`nothing is asked at ${topic}, ${place}`)
  if (ask.kind === 'number') return ask.answer
  if (ask.kind === 'order') return ask.answer.join()
  return ask.options.find(({ id }) => id === ask.answer)!.text
}

describe.each([
  { lesson: BOOT, rows: BOOT_ANSWERS },
  { lesson: COUNTS, rows: COUNTS_ANSWERS },
])('$lesson.id', ({ lesson, rows }) => {
  const cases = rows.map(([topic, place, expected, digits = 0]) => ({ topic, place, expected, digits }))
  test.each(cases)('topic $topic, question $place brings out $expected', (row) => {
    const { topic, place, expected, digits } = row
    const answer = answerAt(lesson, topic, place)
    if (typeof expected === 'string') expect(answer).toBe(expected)
    else expect(Math.abs(Number(answer) - expected)).toBeLessThanOrEqual(0.5 * 10 ** -digits + 1e-12)
  })

  test('asks nothing that the table does not hold', () => {
    const asked = lesson.beats.flatMap(({ questions }) => questions.filter((one) => !isOpen(one)))
    expect(asked.length).toBe(rows.length)
  })
})

const isOpen = (question: Beat['questions'][number]): boolean =>
  !('family' in question) && !('answer' in question) && !('options' in question)

// What the lessons say in their own words about the machine has to be what the core computes for their stage.

const words = (beat: Beat): string => JSON.stringify({ ...beat, stage: null }).replaceAll('−', '-')
const beatOf = (id: string): Beat => [...BOOT.beats, ...COUNTS.beats].find((beat) => beat.id === id)!
const A = DEMO_MACHINES[0].machine
const RPM = 30 / Math.PI

const at = (setting: number, leftLoad: number, rightLoad = leftLoad) =>
  operatingPoint(compileDrive(A), { ...firstInput(), setting, leftLoad, rightLoad })!
const light = at(4, 0).reading
const pressed = at(4, 1).reading
const one = at(4, 1, 0).reading
const heat = (load: number) => {
  const settled = settledHeat(A, { ...firstInput(), setting: 4, leftLoad: load, rightLoad: load })
  if (!settled || 'reason' in settled) throw new Error('it does not settle')
  return settled
}
const backward = (z1: number, { gearing }: Machine) =>
  wheelDrivingEfficiency(
    leadAngle(z1, gearing.diameterQuotient),
    radians(gearing.pressureAngle),
    gearing.friction,
  )
const ratio = A.gearing.wheelTeeth / A.gearing.wormStarts
const heldByMotorAndFan = (light.frictionLoss + light.fanLoss) / light.wormSpeed
const meshPart =
  (2 * (light.leftTorque + A.outputs.bearingTorque)) / (light.motorTorque - heldByMotorAndFan) / ratio

/** [beat, as it is written, what the core says] */
const LITERALS: readonly (readonly [string, string, number])[] = [
  ['one-motor', '184', Math.abs(at(2, 0).reading.leftSpeed) * RPM],
  ['five-settings', '2231', at(0, 0).speed * RPM],
  ['five-settings', '2968', at(1, 0).speed * RPM],
  ['five-settings', '3685', at(2, 0).speed * RPM],
  ['five-settings', '4379', at(3, 0).speed * RPM],
  ['five-settings', '5051', at(4, 0).speed * RPM],
  ['still-looking', '5051', at(4, 0).speed * RPM],
  ['torque-ideal', '0.0389', light.motorTorque],
  ['torque-ideal', '0.778', light.idealTotal],
  ['torque-real', '0.389', light.idealLeft],
  ['torque-real', '0.109', light.leftTorque],
  ['torque-real', '0.219', light.leftTorque + light.rightTorque],
  ['torque-real', '0.119', light.leftTorque + A.outputs.bearingTorque],
  ['torque-real', '0.197', (ratio * light.motorTorque * meshPart) / 2],
  ['torque-real', '0.0153', heldByMotorAndFan],
  ['torque-real', '0.506', meshPart],
  ['torque-real', '28 %', 100 * (light.leftTorque / light.idealLeft)],
  ['torque-real', '0.0946', pressed.motorTorque],
  ['torque-real', '0.409', pressed.leftTorque],
  ['torque-real', '43 %', 100 * (pressed.leftTorque / pressed.idealLeft)],
  ['torque-real', '188', pressed.leftSpeed * RPM],
  ['torque-real', '0.419', one.leftTorque],
  ['torque-real', '0.099', one.rightTorque],
  ['torque-real', '218', Math.abs(one.rightSpeed) * RPM],
  ['motor-torque', '0.409', pressed.leftTorque],
  ['motor-torque', '0.0946', pressed.motorTorque],
  ['bearings', '0.419', one.leftTorque],
  ['bearings', '0.099', one.rightTorque],
  ['warm-and-worn', '36 °C', heat(0).case],
  ['warm-and-worn', '64 °C', heat(1).case],
  ['warm-and-worn', '92 °C', heat(1).winding],
  ['warm-and-worn', '14.9', heat(0).case - 21],
  ['warm-and-worn', '130 °C', CLASS_TEMPERATURE.B],
  ['beside-the-bench', '0.006', A.rotor.frictionTorque],
  ['beside-the-bench', '2.9', (A.rotor.frictionTorque * ratio) / backward(1, A) + A.outputs.bearingTorque],
  ['beside-the-bench', '18.2', 200 / 11],
  ['beside-the-bench', '22.4', 202 / 9],
  ['second-design', '6.28', Math.PI * 2],
  ['second-design', '3.77', Math.PI * 1.2],
  ['teeth', '18.2', 5000 / 275],
  ['teeth', '22.2', 5000 / 225],
]

test.each(LITERALS)('%s says %s, as the core does', (id, written, value) => {
  expect(words(beatOf(id))).toContain(written)
  const [, digits = ''] = /\.(\d+)/.exec(written) ?? []
  expect(Math.abs(Math.abs(value) - Number.parseFloat(written))).toBeLessThanOrEqual(
    0.5 * 10 ** -digits.length,
  )
})

/** [beat, question, what its stage computes to at the left wheel, and at the right one] */
const STAGES: readonly (readonly [string, number, number, number])[] = [
  ['torque-real', 0, light.leftTorque, light.rightTorque],
  ['torque-real', 1, pressed.leftTorque, pressed.rightTorque],
  ['torque-real', 2, one.leftTorque, one.rightTorque],
  ['motor-torque', 0, pressed.leftTorque, pressed.rightTorque],
  ['bearings', 1, pressed.leftTorque, pressed.rightTorque],
  ['bearings', 2, one.leftTorque, one.rightTorque],
]

test.each(STAGES)('%s, question %i, is asked with the loads that it speaks of', (id, place, left, right) => {
  const { questions, stage } = beatOf(id)
  const { machine, bench } = stageState(questions[place]?.stage ?? stage)
  const { reading } = operatingPoint(compileDrive(machine), { ...bench, connected: true })!
  expect([reading.leftTorque, reading.rightTorque]).toEqual([left, right])
})

test('the machine of the topic about heat is as warm as it gets with free brushes', () => {
  const { bench } = stageState(beatOf('warm-and-worn').stage)
  expect([bench.winding, bench.magnet]).toEqual([Math.round(heat(0).winding), Math.round(heat(0).case)])
})

test('what the notes say of the vent opener is so', () => {
  const vent = DEMO_MACHINES.find(({ id }) => id === 'vent-opener')!.machine
  const { wormStarts, diameterQuotient: q, pressureAngle, friction } = vent.gearing
  expect([q, friction]).toEqual([16, 0.12])
  const an = radians(pressureAngle)
  const limit = (Math.cos(an) * wormStarts) / q
  expect(limit.toFixed(4)).toBe('0.0587')
  expect(selfLocking(leadAngle(wormStarts, q), an, friction)).toBe('locks')
  expect(words(beatOf('push-a-wheel'))).toContain('0.0587')
})

test('the second design has its shafts as far apart as the first', () => {
  const { machine } = stageState(beatOf('second-design').stage)
  const apart = ({ gearing }: Machine) =>
    gearing.axialModule * (gearing.diameterQuotient + gearing.wheelTeeth)
  expect(apart(machine)).toBeCloseTo(60, 9)
  expect(apart(A)).toBe(60)
})
