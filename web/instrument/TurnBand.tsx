/** The band that counts: three lanes, left wheel, worm, right wheel, each a head with its counter and a strip of tape. */
import { useStore } from 'zustand'
import { useMachine, useWorkshop } from '../frame/workshop.ts'
import { withGuess } from '../store/prediction.ts'
import { LaneHead } from './LaneHead.tsx'
import { PassTable } from './PassTable.tsx'
import { TurnTape } from './TurnTape.tsx'
import './counting.css'

export interface TurnBandProps {
  readonly size: 'normal' | 'large' | 'predict' | 'phone'
  /** Until the count is over no counter, mark or name tells how far the wheels have turned. */
  readonly covered: boolean
}

const NO_TAPS: readonly number[] = []

export function TurnBand({ size, covered }: TurnBandProps) {
  const { prediction } = useWorkshop()
  const { phase, turns, text, taps, shown } = useStore(prediction)
  const starts = useMachine((machine) => machine.gearing.wormStarts)
  const teeth = useMachine((machine) => machine.gearing.wheelTeeth)
  const asked = size === 'predict' || size === 'phone'
  const hidden = covered && !shown
  const move = (place: number) => prediction.setState((last) => withGuess(last, String(place), place), true)
  return (
    <section className="turn-band" data-size={size} aria-label="Turn tape">
      <div className="lane-heads">
        <LaneHead part="left" covered={hidden} />
        <LaneHead part="worm" covered={hidden} />
        <LaneHead part="right" covered={hidden} />
      </div>
      <TurnTape
        starts={starts}
        teeth={teeth}
        cover={hidden ? (phase === 'predict' ? 'scale' : 'all') : 'none'}
        flag={asked ? turns : null}
        taps={asked && !hidden ? taps : NO_TAPS}
        flagText={text}
        onFlag={asked && hidden && phase === 'predict' ? move : null}
      />
      {!hidden && <PassTable />}
    </section>
  )
}
