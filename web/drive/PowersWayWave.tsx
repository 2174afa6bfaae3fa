/** The wave at one stop over one period, small and without cursors; the Waves panel has them all. */
import { Plot } from '../chart/Plot.tsx'
import { useWidth } from '../chart/use-width.ts'
import { lookAt } from './powers-way-waves.ts'
import { type LaneId, laneSpan } from './waves-lanes.ts'
import { type Moment, useMoment } from './waves-moment.ts'
import { useSeen } from './waves-use-seen.ts'

interface PowersWayWaveProps {
  /** The first of them that this machine has is shown. */
  readonly lanes: readonly LaneId[]
}

export function PowersWayWave({ lanes }: PowersWayWaveProps) {
  const moment = useMoment()
  return typeof moment === 'string' ? null : <Wave lanes={lanes} moment={moment} />
}

const HEIGHT = 180

function Wave({ lanes, moment }: PowersWayWaveProps & { readonly moment: Moment }) {
  const [box, width] = useWidth<HTMLDivElement>()
  const seen = useSeen(moment, lookAt(moment.machine))
  const lane = lanes.flatMap((id) => seen.lanes.filter((each) => each.id === id))[0]
  if (!lane) return null
  const [from, to] = laneSpan(lane)
  const { time, unit, perSecond } = seen.shown
  return (
    <div className="powers-way-wave" ref={box}>
      <Plot
        label={`${lane.name} over one period`}
        width={width}
        height={HEIGHT}
        x={{ label: `Time [${unit}]`, from: 0, to: seen.span * perSecond }}
        y={{ label: `${lane.name} [${lane.unit}]`, from, to }}
        lines={[{ name: lane.name, x: time, y: lane.traces[0].values }]}
      />
    </div>
  )
}
