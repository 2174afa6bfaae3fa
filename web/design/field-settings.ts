/** What a field of the machine brings with it to its control, always judged by the machine as it is now. */
import { withCentres } from '../../sim/machine/centres.ts'
import { checkMachine } from '../../sim/machine/check.ts'
import type { Field } from '../../sim/machine/field.ts'
import { withValue } from '../../sim/machine/fields.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { hasErrors } from '../../sim/machine/problem.ts'
import { labelOfPath } from '../instrument/labels.ts'
import type { QuantitySettings } from './quantity-plugin.ts'

export const fieldSettings = (
  now: () => Machine,
  field: Field,
  heading: string | null = null,
): QuantitySettings => ({
  field,
  heading,
  labelOf: (path) => labelOfPath(now())(path),
  judge: (value) => checkMachine(withValue(now(), field.path, value)),
  freed: (value) => {
    const next = withValue(withCentres(now(), 'shift'), field.path, value)
    return hasErrors(checkMachine(next)) ? null : next
  },
})
