/** What the motor's heat is made of, running as it is set. */
import { Figure } from '../instrument/Figure.tsx'
import { quantityText } from '../instrument/reading-text.ts'
import { useSteady } from '../instrument/use-reading.ts'
import type { ThermalMachine } from './heat-machine.ts'
import { type HeatShare, heatShares } from './heat-sources.ts'

export function HeatSources({ machine }: { readonly machine: ThermalMachine }) {
  const steady = useSteady()
  if (!steady) return null
  const shares = heatShares(machine.thermal, steady.reading)
  const total: HeatShare = {
    name: 'All of it',
    winding: shares.reduce((sum, { winding }) => sum + winding, 0),
    case: shares.reduce((sum, each) => sum + each.case, 0),
  }
  return (
    <section aria-label="Where the heat comes from">
      <h3>Where the heat comes from</h3>
      <table className="drive-table">
        <thead>
          <tr>
            <th scope="col">Watts, running as set</th>
            <th scope="col">Winding</th>
            <th scope="col">Case</th>
          </tr>
        </thead>
        <tbody>
          {shares.map((share) => (
            <Row key={share.name} share={share} />
          ))}
        </tbody>
        <tfoot>
          <Row share={total} />
        </tfoot>
      </table>
      <p className="small">
        How brush and friction heat divides is set in the machine. What the fan and the worm meshes turn into
        heat goes to the air and the gears and is not counted here: on the stage only the motor has the tone
        of its temperature, all else that of the air.
      </p>
    </section>
  )
}

function Row({ share }: { readonly share: HeatShare }) {
  return (
    <tr>
      <th scope="row">{share.name}</th>
      {[share.winding, share.case].map((watts, i) => (
        <td key={i} className="number">
          <Figure text={quantityText(watts, 'W')} unitUnseen />
        </td>
      ))}
    </tr>
  )
}
