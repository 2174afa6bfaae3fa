/** What an insulation class says, and what it does not. */
import { AMBER_MARGIN, CLASS_TEMPERATURE, type InsulationClass } from '../../sim/heat/insulation.ts'
import type { Thermal } from '../../sim/machine/machine.ts'
import { limitOf } from './heat-words.ts'

const CLASSES = Object.keys(CLASS_TEMPERATURE) as readonly InsulationClass[]

export function HeatClass({ thermal }: { readonly thermal: Thermal }) {
  const { insulation, hotSpotMargin } = thermal
  return (
    <section aria-label="Insulation">
      <h3>Class {insulation}</h3>
      <p>
        The varnish round the wire of class {insulation} is made to last at {limitOf(thermal)} °C. What counts
        is the hottest spot, taken as {hotSpotMargin} K above the mean that the winding’s resistance tells.
        That holds near the class; a cold winding has no such spot yet, so early on the thin line is too high.
        Amber begins {AMBER_MARGIN} K below.
      </p>
      <p className="small">
        Classes: {CLASSES.map((each) => `${each} ${CLASS_TEMPERATURE[each]} °C`).join(', ')} (IEC 60085). A
        rule of thumb, not a law: each 10 K more halves the insulation’s life.
      </p>
    </section>
  )
}
