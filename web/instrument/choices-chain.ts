/** What is chosen on the way of the current: protection, and the free way round a motor on half waves. */
import { withValue } from '../../sim/machine/fields.ts'
import type { Machine, Protection } from '../../sim/machine/machine.ts'
import { type Choice, optionsOf } from './choice.ts'
import { withProtection, withSide } from './protection-start.ts'

const PROTECTIONS: Readonly<Record<Exclude<Protection['kind'], 'limit'>, string>> = {
  none: 'None',
  fuse: 'Fuse',
  overload: 'Overload',
}

const isKind = (value: string): value is Protection['kind'] => value === 'limit' || value in PROTECTIONS

/** A current limit is the chopper's. */
const protections = ({ control }: Machine): Readonly<Record<string, string>> =>
  control.kind === 'chopper' ? { ...PROTECTIONS, limit: 'Current limit' } : PROTECTIONS

const sides = ({ transformer, protection }: Machine): Readonly<Record<string, string>> =>
  transformer !== null && (protection.kind === 'fuse' || protection.kind === 'overload')
    ? { primary: 'Mains side', secondary: 'Motor side' }
    : {}

export const CHAIN_CHOICES: readonly Choice[] = [
  {
    path: 'control.freewheel',
    label: 'Freewheel diode',
    section: 'setting',
    place: 'above',
    help: 'A second diode leads the current on round the motor while the first one blocks, so that it falls more slowly.',
    options: ({ control }) =>
      control.kind === 'half-wave' ? optionsOf({ none: 'None', diode: 'Fitted' }) : [],
    chosen: ({ control }) => (control.kind === 'half-wave' ? control.freewheel : ''),
    choose: (machine, value) => withValue(machine, 'control.freewheel', value),
  },
  {
    path: 'protection.kind',
    label: 'Kind of protection',
    section: 'protection',
    place: 'above',
    help: 'What stops too much current: a fuse melts, an overload switch opens and can be closed again, a chopper can limit the current. A new kind begins with 1.7 times the largest current of steady running; set it to yours.',
    options: (machine) => (machine.motor === null ? [] : optionsOf(protections(machine))),
    chosen: ({ protection }) => protection.kind,
    choose: (machine, value) => (isKind(value) ? withProtection(machine, value) : machine),
  },
  {
    path: 'protection.side',
    label: 'Side of the transformer',
    section: 'protection',
    place: 'above',
    help: 'Which winding of the transformer it is in series with. The other side carries another current, so the current that it bears begins anew.',
    options: (machine) => optionsOf(sides(machine)),
    chosen: ({ protection }) => ('side' in protection ? protection.side : ''),
    choose: (machine, value) => withSide(machine, value === 'primary' ? 'primary' : 'secondary'),
  },
]
