/**
 * What a machine is made of, part by part in the order of its file. The numbers come from the field table.
 */
import type { Field } from './field.ts'
import { FIELDS } from './fields.ts'

export type Form = NumberForm | TextForm | ChoiceForm | FixedForm | GroupForm | KindsForm | ListForm

export interface NumberForm {
  readonly is: 'number'
  readonly field: Field
}

export interface TextForm {
  readonly is: 'text'
  readonly least: number
  readonly most: number
  /** Whether it may have more than one line. */
  readonly lines: boolean
}

export interface ChoiceForm {
  readonly is: 'choice'
  readonly among: readonly string[]
}

export interface FixedForm {
  readonly is: 'fixed'
  readonly value: string | number
}

export type Parts = Readonly<Record<string, Form>>

export interface GroupForm {
  readonly is: 'group'
  readonly parts: Parts
  /** May be null. */
  readonly optional: boolean
}

/** A group whose parts depend on its `kind`, which is the first of them. */
export interface KindsForm {
  readonly is: 'kinds'
  readonly kinds: Readonly<Record<string, Parts>>
  readonly optional: boolean
}

export interface ListForm {
  readonly is: 'list'
  readonly item: Parts
  readonly items: string
  readonly most: number
}

/** Settings, or loads. */
export const MOST_ITEMS = 12

/** The numbers directly inside a group, by name. */
function numbers(group: string, kind: string | null = null): Parts {
  const inside = FIELDS.filter(
    (field) => field.when === kind && field.path.slice(0, field.path.lastIndexOf('.')) === group,
  )
  return Object.fromEntries(
    inside.map((field) => [field.path.slice(group.length + 1), { is: 'number', field } satisfies NumberForm]),
  )
}

const text = (least: number, most: number, lines: boolean): TextForm => ({ is: 'text', least, most, lines })
const choice = (...among: readonly string[]): ChoiceForm => ({ is: 'choice', among })
const group = (parts: Parts, optional = false): GroupForm => ({ is: 'group', parts, optional })
const kinds = (kindParts: Readonly<Record<string, Parts>>, optional = false): KindsForm => ({
  is: 'kinds',
  kinds: Object.fromEntries(
    Object.entries(kindParts).map(([kind, parts]) => [
      kind,
      { kind: { is: 'fixed', value: kind }, ...parts },
    ]),
  ),
  optional,
})
const list = (item: Parts, items: string): ListForm => ({ is: 'list', item, items, most: MOST_ITEMS })
const steps = (kind: string): Parts => ({ steps: list(numbers('control.steps.*', kind), 'settings') })

export const MACHINE_FORMAT = 'counterturn-machine'
export const MACHINE_VERSION = 3

export const MACHINE_FORM: GroupForm = group({
  format: { is: 'fixed', value: MACHINE_FORMAT },
  version: { is: 'fixed', value: MACHINE_VERSION },
  name: text(1, 80, false),
  about: text(0, 1000, true),
  supply: kinds({ mains: numbers('supply', 'mains'), battery: numbers('supply', 'battery'), crank: {} }),
  transformer: group(numbers('transformer'), true),
  rectifier: group(numbers('rectifier'), true),
  control: kinds({
    taps: steps('taps'),
    chopper: { ...numbers('control', 'chopper'), ...steps('chopper') },
    phase: { ...numbers('control', 'phase'), ...steps('phase') },
    'half-wave': {
      ...numbers('control', 'half-wave'),
      freewheel: choice('none', 'diode'),
      ...steps('half-wave'),
    },
    crank: steps('crank'),
  }),
  motor: kinds(
    {
      'permanent-magnet': numbers('motor', 'permanent-magnet'),
      universal: numbers('motor', 'universal'),
    },
    true,
  ),
  rotor: group(numbers('rotor')),
  gearing: group({
    profile: choice('ZA', 'ZN', 'ZI', 'ZK'),
    hand: choice('right', 'left'),
    wheelForm: choice('throated', 'helical'),
    depthRule: choice('axial', 'normal', 'mixed'),
    thinned: choice('worm', 'wheel'),
    ...numbers('gearing'),
    centres: kinds({
      shift: numbers('gearing.centres', 'shift'),
      distance: numbers('gearing.centres', 'distance'),
    }),
  }),
  outputs: group({
    ...numbers('outputs'),
    loads: list({ name: text(1, 40, false), ...numbers('outputs.loads.*') }, 'loads'),
  }),
  thermal: group({ insulation: choice('A', 'E', 'B', 'F', 'H', 'N'), ...numbers('thermal') }, true),
  brushes: group(numbers('brushes'), true),
  protection: kinds({
    none: {},
    fuse: { side: choice('primary', 'secondary'), ...numbers('protection', 'fuse') },
    overload: { side: choice('primary', 'secondary'), ...numbers('protection', 'overload') },
    limit: numbers('protection', 'limit'),
  }),
})
