/** Runs the machine as warm as at the moment that is looked at, and says what that changes. */
import { useMemo } from 'react'
import { compileDrive } from '../../sim/drive/drive.ts'
import { rpm } from '../../sim/quantity/convert.ts'
import { HOTTEST } from '../../sim/run/heating-settled.ts'
import { steadyNow } from '../frame/steady.ts'
import { useBench, useWorkshop } from '../frame/workshop.ts'
import { degreeText, quantityText } from '../instrument/reading-text.ts'
import { useSteady } from '../instrument/use-reading.ts'
import { COLD } from '../store/bench.ts'
import type { ThermalMachine } from './heat-machine.ts'
import type { HeatMoment } from './heat-view.ts'

interface HeatWarmProps {
  readonly machine: ThermalMachine
  readonly moment: HeatMoment
}

/** No warmer than anything here holds for */
const settable = (value: number): number => Math.min(HOTTEST, Math.round(10 * value) / 10)

export function HeatWarm({ machine, moment }: HeatWarmProps) {
  const { bench } = useWorkshop()
  const { winding, magnet } = useBench((now) => now)
  const [wanted, wantedMagnet] = [settable(moment.winding), settable(moment.case)]
  const there = winding === wanted && magnet === wantedMagnet
  const cold = winding === COLD && magnet === COLD
  return (
    <>
      <div className="heat-actions">
        <button
          type="button"
          className="button"
          aria-disabled={there}
          onClick={() => bench.setState({ winding: wanted, magnet: wantedMagnet })}
        >
          Run the machine this warm
        </button>
        <button
          type="button"
          className="button"
          aria-disabled={cold}
          onClick={() => bench.setState({ winding: COLD, magnet: COLD })}
        >
          Cold again
        </button>
      </div>
      <p className="small" role="status">
        {cold ? `The machine runs cold, at ${COLD} °C throughout.` : <Changed machine={machine} />}
      </p>
    </>
  )
}

function Changed({ machine }: { readonly machine: ThermalMachine }) {
  const bench = useBench((now) => now)
  const warm = useSteady()
  const cold = useMemo(() => steadyNow(compileDrive(machine), bench), [machine, bench])
  const at =
    machine.motor?.kind === 'permanent-magnet'
      ? `winding ${degreeText(bench.winding)} and magnets ${degreeText(bench.magnet)}`
      : `winding ${degreeText(bench.winding)}`
  if (!warm || !cold) return <>It runs with {at}.</>
  const { speed, reading } = warm
  const change = (from: number, to: number, unit: 'r/min' | 'A') =>
    `${quantityText(to, unit)} instead of ${quantityText(from, unit)}`
  const [slow, fast] = [rpm(Math.abs(speed)), rpm(Math.abs(cold.speed))]
  return (
    <>
      It runs with {at}: {change(fast, slow, 'r/min')},{' '}
      {change(cold.reading.currentRms, reading.currentRms, 'A')} r.m.s.
      {machine.motor?.kind === 'permanent-magnet'
        ? ' Warm copper resists more and warm magnets are weaker.'
        : ' Warm copper resists more.'}
    </>
  )
}
