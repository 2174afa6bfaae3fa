/** Fields of a machine that are chosen, not measured. */
import type { SectionName } from '../../sim/machine/field.ts'
import type { Machine } from '../../sim/machine/machine.ts'

export interface Choice {
  readonly path: string
  readonly label: string
  readonly section: SectionName
  readonly help: string
  readonly options: readonly { readonly value: string; readonly words: string }[]
  readonly chosen: (machine: Machine) => string
}

export const CHOICES: readonly Choice[] = [
  {
    path: 'gearing.hand',
    label: 'Hand of the worm',
    section: 'gearing',
    help: 'Which way the thread winds. Changing the hand turns both wheels the other way.',
    options: [
      { value: 'right', words: 'Right' },
      { value: 'left', words: 'Left' },
    ],
    chosen: ({ gearing }) => gearing.hand,
  },
  {
    path: 'gearing.profile',
    label: 'Thread profile',
    section: 'gearing',
    help: 'Form of the flank: straight in the plane of the axis (ZA), straight square to the thread (ZN), or an involute (ZI).',
    options: [
      { value: 'ZA', words: 'ZA' },
      { value: 'ZN', words: 'ZN' },
      { value: 'ZI', words: 'ZI' },
    ],
    chosen: ({ gearing }) => gearing.profile,
  },
]
