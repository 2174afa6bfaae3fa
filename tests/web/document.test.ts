import { expect, test } from 'vitest'
import { withValue } from '../../sim/machine/fields.ts'
import { canRedo, canUndo, createDocument } from '../../web/store/document.ts'
import { bootCleaner } from '../support/machines.ts'

const teeth = (count: number) => (machine: typeof bootCleaner) =>
  withValue(machine, 'gearing.wheelTeeth', count)

test('all edits of one gesture are one step of undo', () => {
  const document = createDocument(bootCleaner)
  document.beginGesture()
  for (const count of [21, 22, 23]) document.edit(teeth(count))
  expect(canUndo(document.store.getState())).toBe(true)
  document.endGesture()
  expect(document.store.getState().past).toHaveLength(1)
  document.undo()
  expect(document.store.getState().machine).toBe(bootCleaner)
  document.redo()
  expect(document.store.getState().machine.gearing.wheelTeeth).toBe(23)
})

test('an edit that changes nothing leaves nothing to undo', () => {
  const document = createDocument(bootCleaner)
  document.edit(teeth(20))
  expect(canUndo(document.store.getState())).toBe(false)
})

test('a new edit after undo drops what could be done again', () => {
  const document = createDocument(bootCleaner)
  document.edit(teeth(21))
  document.undo()
  expect(canRedo(document.store.getState())).toBe(true)
  document.edit(teeth(30))
  expect(canRedo(document.store.getState())).toBe(false)
  document.undo()
  expect(document.store.getState().machine.gearing.wheelTeeth).toBe(20)
})

test('undo closes an open gesture first', () => {
  const document = createDocument(bootCleaner)
  document.beginGesture()
  document.edit(teeth(25))
  document.undo()
  expect(document.store.getState()).toMatchObject({ machine: bootCleaner, gestureStart: null })
})
