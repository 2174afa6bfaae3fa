/** The rows of the field table for starts and teeth, which stand over the stage from the first picture on. */
import { sectionFields } from './field.ts'

export const COUNT_FIELDS = sectionFields('gearing', [
  {
    path: 'gearing.wormStarts',
    label: 'Worm starts',
    symbol: 'z₁',
    unit: '',
    min: 1,
    max: 8,
    step: 1,
    whole: true,
    typical: [1, 4],
    help: 'Separate threads that wind round the worm. One turn of the worm moves each wheel on by that many teeth.',
  },
  {
    path: 'gearing.wheelTeeth',
    label: 'Wheel teeth',
    symbol: 'z₂',
    unit: '',
    min: 8,
    max: 120,
    step: 1,
    whole: true,
    help: 'Teeth on each of the two wheels. Teeth over starts is the number of worm turns for one wheel turn.',
  },
])
