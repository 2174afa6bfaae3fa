/** The machines that come with the program. The tests read their files with every check, so that the page need not. */
import bootCleaner from '../../assets/machines/boot-cleaner.json?raw'
import classroomModel from '../../assets/machines/classroom-model.json?raw'
import cordWinder from '../../assets/machines/cord-winder.json?raw'
import ventOpener from '../../assets/machines/vent-opener.json?raw'
import type { Machine } from '../../sim/machine/machine.ts'

export interface DemoMachine {
  /** Written in links: never changed once it is out. */
  readonly id: string
  readonly sentence: string
  readonly machine: Machine
}

const demo = (id: string, text: string, sentence: string): DemoMachine => ({
  id,
  sentence,
  machine: JSON.parse(text) as Machine,
})

export const DEMO_MACHINES: readonly [DemoMachine, ...DemoMachine[]] = [
  demo('boot-cleaner', bootCleaner, 'A mains brush machine at a workshop door, with five speed settings.'),
  demo('vent-opener', ventOpener, 'A battery drive that lifts two vents and holds them when it is off.'),
  demo('cord-winder', cordWinder, 'A fast mains winder with a universal motor.'),
  demo('classroom-model', classroomModel, 'A printed model with a crank, to turn and count by hand.'),
]
