/** What to print, and with how much room between the teeth. */
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { Choice } from '../panel/Choice.tsx'
import { LengthField } from './LengthField.tsx'
import { boreLimits, clearanceLimits } from './print-order.ts'
import { WHAT_WORDS } from './print-words.ts'
import type { Print } from './use-print.ts'

const WHATS = [
  { value: 'worm', label: 'Worm' },
  { value: 'wheel', label: 'Wheel' },
  { value: 'set', label: 'Whole set' },
] as const
const THINNED = [
  { value: 'worm', label: 'Worm' },
  { value: 'wheel', label: 'Wheels' },
] as const
const FINENESS = [
  { value: 'print', label: 'Fine' },
  { value: 'display', label: 'Light' },
] as const

function boreNote(gearing: GearNumbers): string {
  const { boreDiameter } = gearing
  if (boreDiameter > boreLimits(gearing).max)
    return `The machine's own bore of ${boreDiameter} mm leaves no rim under these teeth.`
  return 'A printed hole comes out a little small: add 0.1 to 0.2\u00a0mm (common practice), or drill it.'
}

export function PrintChoices({ print }: { readonly print: Print }) {
  const { machine, order, changes, setWhat, setFineness, change } = print
  const { gearing } = machine
  return (
    <>
      <Choice label="What to print" choices={WHATS} value={order.what} onChange={setWhat} />
      <p className="small">{WHAT_WORDS[order.what]}</p>
      <LengthField
        label="Clearance, as axial backlash"
        value={changes.clearance}
        {...clearanceLimits(gearing)}
        step={0.05}
        note={`Common practice for filament printing: 0.15 to 0.3\u00a0mm. The machine itself has ${gearing.backlash} mm.`}
        onChange={(clearance) => change({ clearance })}
      />
      <div className="print-choice">
        <span>Taken off the</span>
        <Choice
          label="Part that is made thinner"
          choices={THINNED}
          value={changes.thinned}
          onChange={(thinned) => change({ thinned })}
        />
      </div>
      {order.what !== 'worm' && (
        <LengthField
          label="Bore of the wheel"
          value={changes.bore}
          {...boreLimits(gearing)}
          step={0.1}
          note={boreNote(gearing)}
          onChange={(bore) => change({ bore })}
        />
      )}
      <div className="print-choice">
        <span>Surface</span>
        <Choice label="Surface" choices={FINENESS} value={order.fineness} onChange={setFineness} />
      </div>
      <p className="small">Light has far fewer triangles, and is enough for most filament printers.</p>
    </>
  )
}
