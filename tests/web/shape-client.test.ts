/** Shapes from the other thread: which request is answered, and what happens without the thread. */
import { expect, test } from 'vitest'
import type { Machine } from '../../sim/machine/machine.ts'
import { buffersOf, machineShape } from '../../web/scene/machine-shape.ts'
import { type ShapeRequest, createShapeClient } from '../../web/shape-work/shape-client.ts'
import { bootCleaner, demoMachines } from '../support/machines.ts'

/** A thread that keeps what it is sent until it is told to answer. */
function heldThread() {
  const sent: ShapeRequest[] = []
  const thread = Object.assign(new EventTarget(), {
    ended: false,
    postMessage: (request: ShapeRequest) => void sent.push(request),
    terminate() {
      thread.ended = true
    },
  })
  const answer = () => {
    const { machine, detail } = sent.at(-1)!
    thread.dispatchEvent(new MessageEvent('message', { data: machineShape(machine, detail) }))
  }
  return { thread, sent, answer }
}

const withTeeth = (teeth: number): Machine => ({
  ...bootCleaner,
  gearing: { ...bootCleaner.gearing, wheelTeeth: teeth },
})
const request = (teeth: number): ShapeRequest => ({ machine: withTeeth(teeth), detail: 'low' })
const teethOf = ({ machine }: ShapeRequest): number => machine.gearing.wheelTeeth

test('while the thread is at work only the newest request waits', () => {
  const { thread, sent, answer } = heldThread()
  const answered: number[] = []
  const client = createShapeClient(thread, (asked, shape) => {
    expect(shape.layout.teeth).toBe(teethOf(asked))
    answered.push(teethOf(asked))
  })
  for (const teeth of [20, 21, 22, 23]) client.ask(request(teeth))
  expect(sent.map(teethOf)).toEqual([20])
  answer()
  expect(sent.map(teethOf)).toEqual([20, 23])
  answer()
  expect(answered).toEqual([20, 23])
})

test('when the thread fails the newest request is answered directly, and all later ones', () => {
  const { thread, sent } = heldThread()
  const answered: number[] = []
  const client = createShapeClient(thread, (asked) => answered.push(teethOf(asked)))
  client.ask(request(20))
  client.ask(request(21))
  thread.dispatchEvent(new Event('error'))
  expect(answered).toEqual([21])
  client.ask(request(22))
  expect(answered).toEqual([21, 22])
  expect(sent.map(teethOf)).toEqual([20])
  expect(thread.ended).toBe(true)
})

test('without a thread every request is answered at once', () => {
  const answered: number[] = []
  const client = createShapeClient(null, (asked) => answered.push(teethOf(asked)))
  client.ask(request(20))
  expect(answered).toEqual([20])
})

test('after it is let go nothing is answered any more', () => {
  const { thread, answer } = heldThread()
  let answers = 0
  const client = createShapeClient(thread, () => answers++)
  client.ask(request(20))
  client.dispose()
  answer()
  expect(answers).toBe(0)
})

test.each(demoMachines)('every array of $name is handed over, each once, and survives the way', (machine) => {
  const shape = machineShape(machine, 'low')
  const kept = structuredClone(shape)
  const sent = structuredClone(shape, { transfer: buffersOf(shape) as ArrayBuffer[] })
  expect(sent).toEqual(kept)
  for (const solid of shape.solids.values()) expect(solid.positions.byteLength).toBe(0)
  expect(sent.solids.get('leftBrush')).toBe(sent.solids.get('rightBrush'))
})
