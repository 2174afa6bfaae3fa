import { expect, test } from 'vitest'
import { withValue } from '../../sim/machine/fields.ts'
import { printMachine } from '../../sim/machine/file.ts'
import { advanceModel, placeAt, turnByDrive } from '../../web/frame/frame.ts'
import { createWorkshop, paceFor } from '../../web/frame/workshop.ts'
import { plainState } from '../../web/file/link-state.ts'
import { openMachine } from '../../web/file/open-machine.ts'
import { MOST_FILE, fileName, readMachineFile } from '../../web/file/open-save.ts'
import { readLink } from '../../web/file/read-link.ts'
import { linkFor } from '../../web/file/link-for.ts'
import { openState } from '../../web/file/open-state.ts'
import { stateOf } from '../../web/file/workshop-state.ts'
import { writeLink } from '../../web/file/write-link.ts'
import { bootCleaner, classroomModel, demoMachines, ventOpener } from '../support/machines.ts'

test.each([
  ['Boot cleaner', 'boot-cleaner.json'],
  ['  Vent / opener: "2nd"  ', 'vent-opener-2nd.json'],
  ['../../etc/passwd', 'etc-passwd.json'],
  ['Türöffner Nr. 3', 'türöffner-nr-3.json'],
  ['靴のブラシ', '靴のブラシ.json'],
  ['***', 'machine.json'],
  ['Con', 'machine-con.json'],
  ['com1', 'machine-com1.json'],
  ['.hidden', 'hidden.json'],
  ['\u202Egnp.exe', 'gnp-exe.json'],
  ['x'.repeat(80), `${'x'.repeat(60)}.json`],
])('the machine %j is saved as %s', (name, file) => {
  expect(fileName({ ...bootCleaner, name })).toBe(file)
})

const fileOf = (text: string, size = text.length) => ({
  name: 'mine.json',
  size,
  text: () => Promise.resolve(text),
})

test.each(demoMachines)('$name is read from the file that it was saved to', async (machine) => {
  const opening = await readMachineFile(fileOf(printMachine(machine)))
  expect(opening.name).toBe('mine.json')
  expect(opening.machine).toStrictEqual(machine)
  expect(opening.problems.filter(({ severity }) => severity !== 'note')).toEqual([])
})

test('a file that is too large is not even read', async () => {
  let reads = 0
  const file = { ...fileOf('', MOST_FILE + 1), text: () => Promise.resolve(String(reads++)) }
  const { machine, problems } = await readMachineFile(file)
  expect(machine).toBeNull()
  expect(problems[0]!.message).toBe('must be a file of at most 1000 kB, got 1001 kB')
  expect(reads).toBe(0)
})

test('a file that cannot be read is a problem, as when it was moved away meanwhile', async () => {
  const file = { ...fileOf(''), text: () => Promise.reject(new DOMException('gone', 'NotFoundError')) }
  expect((await readMachineFile(file)).problems).toHaveLength(1)
})

test('a file with mistakes lists each with its path, and gives no machine', async () => {
  const broken = { ...bootCleaner, gearing: { ...bootCleaner.gearing, wheelTeeth: 'many', wormStarts: -1 } }
  const { machine, problems } = await readMachineFile(fileOf(JSON.stringify(broken)))
  expect(machine).toBeNull()
  expect(problems.map(({ path }) => path)).toEqual(
    expect.arrayContaining(['gearing.wheelTeeth', 'gearing.wormStarts']),
  )
})

test('opening keeps the bench within what the machine offers, sets a pace to count at, and can be undone', () => {
  const workshop = createWorkshop(bootCleaner, 'light')
  workshop.bench.setState({ setting: 4, leftLoad: 1, rightLoad: 1 })
  turnByDrive(workshop.frame)
  advanceModel(workshop.frame, 1)
  const turns = { ...workshop.frame.state.turns }
  expect(turns.turns).toBeGreaterThan(1)

  openMachine(workshop, classroomModel)
  expect(workshop.document.store.getState().machine).toBe(classroomModel)
  expect(workshop.bench.getState()).toMatchObject({ setting: 0, leftLoad: 0, rightLoad: 0 })
  expect(workshop.bench.getState().pace).toBe(paceFor(classroomModel))
  expect(workshop.frame.motion).toBe('still')
  expect(workshop.frame.state.turns).toEqual(turns)

  workshop.document.undo()
  expect(workshop.document.store.getState().machine).toBe(bootCleaner)
})

test('opening in the middle of a gesture is an entry of its own in the past', () => {
  const workshop = createWorkshop(bootCleaner, 'light')
  const edited = withValue(bootCleaner, 'gearing.wheelTeeth', 30)
  workshop.document.beginGesture()
  workshop.document.edit(() => edited)
  openMachine(workshop, ventOpener)
  workshop.document.undo()
  expect(workshop.document.store.getState().machine).toBe(edited)
  workshop.document.undo()
  expect(workshop.document.store.getState().machine).toBe(bootCleaner)
})

test('a link opens another page on the same machine, bench, picture and moment', () => {
  const one = createWorkshop(withValue(bootCleaner, 'gearing.wheelTeeth', 31), 'light')
  one.bench.setState({ setting: 3, rightLoad: 1, jammed: 'left', pace: 100 })
  one.view.setState({ way: 'design', caseState: 'off', apart: 0.3, withoutLosses: true, large: true })
  turnByDrive(one.frame)
  one.bench.setState({ jammed: 'none' })
  advanceModel(one.frame, 0.37)

  const other = createWorkshop(ventOpener, 'dark')
  openState(other, readLink(linkFor(one)).state!)
  expect(one.frame.state.turns.rest).toBeGreaterThan(0)
  expect(stateOf(other)).toStrictEqual(stateOf(one))
  expect(other.frame.motion).toBe('still')
  expect(other.view.getState().theme).toBe('dark')
  other.document.undo()
  expect(other.document.store.getState().machine).toBe(ventOpener)
})

test('opening the same machine again leaves nothing to undo', () => {
  const workshop = createWorkshop(bootCleaner, 'light')
  openState(workshop, readLink(writeLink(plainState(bootCleaner))).state!)
  expect(workshop.document.store.getState().past).toEqual([])
})

test('a link made in Predict tells nothing of the turns, and opens in the question', () => {
  const workshop = createWorkshop(ventOpener, 'light')
  workshop.view.setState({ way: 'predict', apart: 0.5 })
  workshop.bench.setState({ setting: 2, pluggedIn: false })
  placeAt(workshop.frame, 36, 0, 0)
  expect(readLink(linkFor(workshop)).state).toStrictEqual(plainState(ventOpener, 'predict'))
  const set = { bank: 1, seed: 'room', items: [{ family: 'turns-worm', index: 0, level: 1 as const }], at: 0 }
  workshop.predict.setState({ source: 'set', set })
  expect(readLink(linkFor(workshop)).state).toStrictEqual({
    ...plainState(ventOpener, 'predict'),
    asked: set,
  })
})

test('a link made before the commitment opens at a pace at which its machine can be counted', () => {
  const workshop = createWorkshop(bootCleaner, 'light')
  openState(workshop, plainState(classroomModel, 'predict'))
  expect(workshop.bench.getState().pace).toBe(paceFor(classroomModel))
})
