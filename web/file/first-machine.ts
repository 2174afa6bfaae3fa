/** The machine that the page opens with. */
import bootCleaner from '../../assets/machines/boot-cleaner.json?raw'
import type { Machine } from '../../sim/machine/machine.ts'

export interface DemoMachine {
  /** Written in links: never changed once it is out. */
  readonly id: string
  readonly sentence: string
  readonly machine: Machine
}

export const demoMachine = (id: string, text: string, sentence: string): DemoMachine => ({
  id,
  sentence,
  machine: JSON.parse(text) as Machine,
})

export const FIRST_MACHINE = demoMachine(
  'boot-cleaner',
  bootCleaner,
  'A mains brush machine at a workshop door, with five speed settings.',
)
