/** When the winding passes each level, in the time shown. */
import type { HeatView } from './heat-view.ts'
import { timeText } from './heat-span.ts'
import { amberOf, limitOf, passedBy } from './heat-words.ts'

export function HeatPassed({ view: { thermal, heated } }: { readonly view: HeatView }) {
  const { amber, red, mean } = passedBy(heated.run, thermal)
  const { insulation } = thermal
  return (
    <dl className="heat-rows">
      <Row name={`Hottest spot amber, ${amberOf(thermal)} °C`} seconds={amber} />
      <Row name={`Hottest spot red, class ${insulation}, ${limitOf(thermal)} °C`} seconds={red} />
      <Row name={`Mean of the winding at class ${insulation}`} seconds={mean} />
    </dl>
  )
}

function Row({ name, seconds }: { readonly name: string; readonly seconds: number }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd className="number">{seconds < Infinity ? `after ${timeText(seconds)}` : 'not reached'}</dd>
    </div>
  )
}
