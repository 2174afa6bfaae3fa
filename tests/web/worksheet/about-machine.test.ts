/** A sheet about somebody's own machine, from the paper to the screen. */
import { expect, test } from 'vitest'
import { openState } from '../../../web/file/open-state.ts'
import { readAddress } from '../../../web/file/address.ts'
import { readLink } from '../../../web/file/read-link.ts'
import { createWorkshop } from '../../../web/frame/workshop.ts'
import * as session from '../../../web/predict/session.ts'
import { MACHINE_FAMILIES } from '../../../web/worksheet/about-machine.ts'
import { sheetLink } from '../../../web/worksheet/link.ts'
import { firstOrder } from '../../../web/worksheet/order.ts'
import { sheetsOf } from '../../../web/worksheet/sheets.ts'
import { bootCleaner, cordWinder, ventOpener } from '../../support/machines.ts'

/** Counts that no demo machine has */
const own = {
  ...ventOpener,
  name: 'Own',
  gearing: { ...ventOpener.gearing, wormStarts: 3, wheelTeeth: 37, hand: 'left' as const },
}

for (const machine of [bootCleaner, ventOpener, cordWinder, own]) {
  test(`the link of a sheet about ${machine.name} asks its questions, on that machine`, () => {
    const aboutMachine = MACHINE_FAMILIES.slice(0, 12).map(({ name }) => ({
      family: name,
      level: 2 as const,
    }))
    const at = { machine, practice: bootCleaner, lessons: [] }
    const made = sheetsOf({ ...firstOrder, from: 'machine', aboutMachine, seed: 'paper' }, at)
    const [sheet] = 'sheets' in made ? made.sheets : []
    expect(sheet!.questions.length).toBeGreaterThan(6)
    const link = sheetLink(sheet!, 'https://counterturn.example/')!
    const { state, problems } = readLink(readAddress(link.slice(link.indexOf('#'))).link!)
    expect(problems).toEqual([])

    const workshop = createWorkshop(bootCleaner, 'light')
    openState(workshop, state!)
    session.askNow(workshop)
    for (const { text, gearing } of sheet!.questions) {
      expect(workshop.exercise.getState().question!.text).toBe(text)
      const { wormStarts, wheelTeeth, hand } = machine.gearing
      expect({ wormStarts, wheelTeeth, hand, ...gearing }).toMatchObject({ wormStarts, wheelTeeth, hand })
      const shown = workshop.document.store.getState().machine
      expect(shown.name).toBe(machine.name)
      expect(shown.gearing).toEqual(machine.gearing)
      session.askNext(workshop)
    }
  })
}
