import { expect, test } from 'vitest'
import { type Job, createSaving } from '../../../web/models/saving.ts'

/** A job that ends when it is told to. */
function job(name: string) {
  let finish = (_hand: (() => void) | null) => {}
  let fail = (_fault: Error) => {}
  const done = new Promise<(() => void) | null>((resolve, reject) => ([finish, fail] = [resolve, reject]))
  const given: Job = {
    name,
    remedy: 'Try again.',
    work: (tell) => {
      tell('Cutting')
      return { done, cancel: () => finish(null) }
    },
  }
  return { given, finish: (hand: () => void) => finish(hand), fail: (fault: Error) => fail(fault) }
}
const settled = () => new Promise((resolve) => setTimeout(resolve))

test('a second press while one file is made changes nothing', async () => {
  const { store, save } = createSaving(() => {})
  const [first, second] = [job('a.stl'), job('b.stl')]
  let handed = 0
  save(first.given)
  save(second.given)
  first.finish(() => handed++)
  await settled()
  expect(store.getState()).toEqual({ progress: null, outcome: 'Saved as a.stl.' })
  expect(handed).toBe(1)
})

test('a file whose panel is left is made all the same, and its end is spoken', async () => {
  const spoken: string[] = []
  const { store, save, watch } = createSaving((outcome) => spoken.push(outcome))
  const leave = watch()
  const one = job('a.stl')
  save(one.given)
  leave()
  expect(store.getState().progress).toBe('Cutting')
  let handed = 0
  one.finish(() => handed++)
  await settled()
  expect([handed, spoken]).toEqual([1, ['Saved as a.stl.']])
})

test('a panel that shows the end needs nobody to speak it, and takes it along when it is left', async () => {
  const spoken: string[] = []
  const { store, save, watch, cancel } = createSaving((outcome) => spoken.push(outcome))
  const leave = watch()
  save(job('a.stl').given)
  cancel()
  await settled()
  expect(store.getState().outcome).toBe('a.stl was not made, as you asked.')
  expect(spoken).toEqual([])
  leave()
  expect(store.getState().outcome).toBe('')
})

test('a failure says why and what to do, and the next one starts anew', async () => {
  const { store, save } = createSaving(() => {})
  const bad = job('a.stl')
  save(bad.given)
  bad.fail(new Error('no memory'))
  await settled()
  expect(store.getState().outcome).toBe('a.stl could not be made: no memory. Try again.')
  save(job('b.stl').given)
  expect(store.getState()).toEqual({ progress: 'Cutting', outcome: '' })
})
