/** What is chosen of heat and brushes. */
import { withValue } from '../../sim/machine/fields.ts'
import { type Choice, optionsOf } from './choice.ts'
import { type Described, withDescribed } from './start-numbers.ts'

/** Behind a crank there is neither. */
const describing = (part: Described, label: string, help: string): Choice => ({
  path: part,
  label,
  section: part,
  place: 'above',
  help,
  options: ({ motor }) => (motor === null ? [] : optionsOf({ no: 'Not described', yes: 'Described' })),
  chosen: (machine) => (machine[part] === null ? 'no' : 'yes'),
  choose: (machine, value) => withDescribed(machine, part, value === 'yes'),
})

/** Temperatures from IEC 60085, from memory. */
const CLASSES = {
  A: 'A, 105 °C',
  E: 'E, 120 °C',
  B: 'B, 130 °C',
  F: 'F, 155 °C',
  H: 'H, 180 °C',
  N: 'N, 200 °C',
}

export const HEAT_CHOICES: readonly Choice[] = [
  describing(
    'thermal',
    'Warming of the motor',
    'Heat is computed only where it is described. Describing it puts in the numbers of a small motor as a start; set each of them to yours.',
  ),
  {
    path: 'thermal.insulation',
    label: 'Insulation class',
    section: 'thermal',
    place: 'above',
    help: 'Class of the winding’s insulation, by the temperature that it bears for its whole life at the hottest spot.',
    options: ({ thermal }) => (thermal === null ? [] : optionsOf(CLASSES)),
    chosen: ({ thermal }) => thermal?.insulation ?? '',
    choose: (machine, value) => withValue(machine, 'thermal.insulation', value),
  },
  describing(
    'brushes',
    'Sliding contact',
    'Sparking and wear are estimated only where the contact is described. Describing it puts in the numbers of a small motor as a start; set each of them to yours.',
  ),
]
