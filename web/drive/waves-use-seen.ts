/** The wave of the moment: at once with the speed held still, then, where it settles, with its ripple. */
import { useMemo } from 'react'
import type { WaveOrder } from '../run-work/orders.ts'
import { useRun } from '../run-work/use-run.ts'
import type { Moment } from './waves-moment.ts'
import { type Look, type Seen, isWhole, seenOf, stretchOf } from './waves-seen.ts'
import { SAMPLES, waveAt } from './waves-work.ts'

export function useSeen(moment: Moment, look: Look): Seen {
  const { machine, warmth, drive, input, speed, settled } = moment
  const circuit = drive.circuits[input.setting]!
  const stretch = useMemo(() => stretchOf(circuit, look), [circuit, look])
  const { periods } = stretch
  const order: WaveOrder | null =
    settled && isWhole(circuit, stretch)
      ? { kind: 'wave', machine, warmth, input, periods, samples: SAMPLES }
      : null
  const { run } = useRun<WaveOrder>(order)
  const answer = run.state === 'done' ? run.answer : null
  const passing = useMemo(
    () => (answer ? null : waveAt(drive, input, speed, stretch)),
    [answer, drive, input, speed, stretch],
  )
  return useMemo(
    () => (answer ? seenOf(moment, answer.wave, answer.ripple) : seenOf(moment, passing!, null)),
    [moment, answer, passing],
  )
}
