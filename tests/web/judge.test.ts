import { expect, test } from 'vitest'
import { checkMachine } from '../../sim/machine/check.ts'
import { withValue } from '../../sim/machine/fields.ts'
import { createJudge } from '../../web/demonstrate/judge.ts'
import { createDocument } from '../../web/store/document.ts'
import { bootCleaner } from '../support/machines.ts'

const tooth = (count: number) => withValue(bootCleaner, 'gearing.wheelTeeth', count)
const none = () => []

test('the checks are fetched once, when they are first needed', async () => {
  let fetched = 0
  const judge = createJudge(() => Promise.resolve(none).finally(() => fetched++))
  expect(fetched).toBe(0)
  await Promise.all([judge.inTurn(() => 1), judge.fetch(), judge.inTurn(() => 2)])
  await judge.fetch()
  expect(fetched).toBe(1)
})

test('with the checks here, an answer comes at once and is the first error that they find', async () => {
  const judge = createJudge(() => Promise.resolve(checkMachine))
  await judge.fetch()
  const errors = checkMachine(tooth(3)).filter(({ severity }) => severity === 'error')
  expect(errors.length).toBeGreaterThan(0)
  expect(judge.inTurn((refused) => refused(tooth(3)))).toEqual(errors[0])
  expect(judge.inTurn((refused) => refused(tooth(31)))).toBeNull()
})

test('what waits is done in the order in which it came, also what comes while it is done', async () => {
  const done: number[] = []
  let arrive = (_check: typeof none) => {}
  const judge = createJudge(() => new Promise((resolve) => (arrive = resolve)))
  const acts = [1, 2, 3].map((each) => judge.inTurn(() => done.push(each)))
  await Promise.resolve()
  expect(done).toEqual([])
  arrive(none)
  await Promise.all(acts.map((act) => Promise.resolve(act)))
  void judge.inTurn(() => done.push(4))
  expect(done).toEqual([1, 2, 3, 4])
})

test('a gesture that began and ended before the checks came is one entry in the past', async () => {
  const document = createDocument(bootCleaner)
  const judge = createJudge(() => Promise.resolve(checkMachine))
  const acts = [
    judge.inTurn(() => document.beginGesture()),
    ...[30, 31, 32].map((count) => judge.inTurn(() => document.edit(() => tooth(count)))),
    judge.inTurn(() => document.endGesture()),
  ]
  expect(document.store.getState().machine).toBe(bootCleaner)
  await Promise.all(acts.map((act) => Promise.resolve<unknown>(act)))
  expect(document.store.getState()).toMatchObject({ machine: tooth(32), past: [bootCleaner] })
})

test('checks that cannot be fetched refuse everything with a reason, and are asked for again next time', async () => {
  let tries = 0
  const judge = createJudge(() => {
    tries++
    return tries === 1 ? Promise.reject(new Error('no network')) : Promise.resolve(none)
  })
  const done: string[] = []
  const first = judge.inTurn((refused) => refused(bootCleaner))
  const gesture = judge.inTurn(() => done.push('ended'))
  expect((await first)?.message).toMatch(/could not be fetched/)
  await gesture
  expect(done).toEqual(['ended'])
  expect(await judge.inTurn((refused) => refused(bootCleaner))).toBeNull()
})
