/** In the order of the controls. */
export type SectionName =
  | 'gearing'
  | 'teeth'
  | 'supply'
  | 'setting'
  | 'motor'
  | 'rotor'
  | 'outputs'
  | 'thermal'
  | 'brushes'
  | 'protection'

export const SECTIONS: readonly { readonly name: SectionName; readonly title: string }[] = [
  { name: 'gearing', title: 'Worm and wheels' },
  { name: 'teeth', title: 'Tooth form and fit' },
  { name: 'supply', title: 'Supply' },
  { name: 'setting', title: 'Speed setting' },
  { name: 'motor', title: 'Motor' },
  { name: 'rotor', title: 'Rotor and fan' },
  { name: 'outputs', title: 'Outputs and loads' },
  { name: 'thermal', title: 'Heat' },
  { name: 'brushes', title: 'Brushes and commutator' },
  { name: 'protection', title: 'Protection' },
]

/**
 * One number of a machine, as the checks, the controls and the help know it.
 *
 * path    - 'gearing.wheelTeeth'; an item of a list is a star: 'control.steps.*.voltage'
 * when    - the kind of supply, control or motor that has this field; null where there is only one kind
 * unit    - the trade's unit in which a machine holds it; '' for a plain number
 * min/max - outside them the machine cannot be used
 * typical - outside them it can, but will disappoint
 * step    - of a control; a value need not be a multiple of it
 * source  - of the range, or of the meaning where the range is ours
 */
export interface Field {
  readonly path: string
  readonly when: string | null
  readonly label: string
  readonly symbol: string
  readonly unit: string
  readonly min: number
  readonly max: number
  readonly step: number
  readonly whole: boolean
  readonly typical: readonly [number, number] | null
  readonly section: SectionName
  readonly help: string
  readonly source: string
}

type Told = 'path' | 'label' | 'symbol' | 'unit' | 'min' | 'max' | 'step' | 'help'

/** A row of the table: what every field says of itself, with the rest usual unless told. */
export type FieldRow = Pick<Field, Told> & Partial<Omit<Field, Told | 'section'>>

export const sectionFields = (section: SectionName, rows: readonly FieldRow[]): readonly Field[] =>
  rows.map((row) => ({
    when: null,
    whole: false,
    typical: null,
    source: 'common practice',
    ...row,
    section,
  }))
