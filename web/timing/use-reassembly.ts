/** The exercise of taking the left wheel out and putting it back, step by step. */
import { useEffect, useState } from 'react'
import { useStore } from 'zustand'
import { type WormTurns, copyTurns, noTurns, ticksBetween } from '../../sim/drive/turns.ts'
import type { TimedPair } from '../../sim/gear/timing.ts'
import { hold, turnByHand } from '../frame/frame.ts'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { putIn } from './put-in.ts'
import {
  distanceAsPutIn,
  handTurnOf,
  meetingTooth,
  teethPassed,
  toothTicks,
  wheelTicks,
} from './reassembly.ts'
import { rightRowAngle } from './row-angles.ts'
import { distanceText } from './timing-words.ts'
import { type Timing, sameTooth } from './use-timing.ts'
import { WHEELS_OFF } from './wheels-off.ts'

export type Exercise =
  | { readonly step: 'together' }
  /** `refused`: distance of the rows [mm] at a tooth at which it does not go in */
  | { readonly step: 'out'; readonly tooth: number; readonly refused: number | null }
  | {
      readonly step: 'in'
      readonly tooth: number
      /** Where the worm was then */
      readonly from: WormTurns
      /** Tooth before which it stopped short */
      readonly meets: number | null
    }

const TOGETHER: Exercise = { step: 'together' }

export function useReassembly(timing: Timing) {
  const workshop = useWorkshop()
  const { frame, view, readout } = workshop
  const [exercise, setExercise] = useState(TOGETHER)
  const [said, say] = useState('')
  const apart = useView((now) => now.apart)
  const turning = useStore(readout, (now) => now.motion !== 'still')
  const { pair, layout, chosen } = timing
  const rowAngleNow = () => rightRowAngle(layout, frame.state.turns)
  const passed = useTeethPassed(exercise.step === 'in' ? exercise.from : null, pair)
  const cleared = exercise.step === 'in' && exercise.meets === null && !turning && passed >= pair.teeth
  const done = cleared || (exercise.step === 'in' && exercise.meets !== null)

  // parts that somebody puts together otherwise, and a tooth that is chosen otherwise, end the exercise
  const ended =
    (exercise.step === 'out' && apart === 0) ||
    (exercise.step === 'in' && !sameTooth(pair, exercise.tooth, chosen.toothOffset))
  useEffect(() => {
    if (ended) setExercise(TOGETHER)
  }, [ended])

  useEffect(() => {
    if (cleared) say(`Clear over a whole turn. The rows keep ${distanceText(chosen.distance)}.`)
  }, [cleared, chosen])

  const takeOut = () => {
    hold(frame)
    view.setState({ apart: WHEELS_OFF })
    setExercise({ step: 'out', tooth: chosen.toothOffset, refused: null })
    say('The left wheel is out. Choose a tooth and put it in.')
  }
  const choose = (tooth: number) => setExercise({ step: 'out', tooth, refused: null })
  const leave = () => {
    view.setState({ apart: 0 })
    setExercise(TOGETHER)
    say('The left wheel is back at the tooth where it was.')
  }
  const finish = () => setExercise(TOGETHER)
  const put = () => {
    if (exercise.step !== 'out') return
    const { tooth } = exercise
    const distance = distanceAsPutIn(pair, tooth, rowAngleNow())
    if (distance <= pair.need) {
      setExercise({ step: 'out', tooth, refused: distance })
      say(`It does not go in at tooth ${tooth}. The rows would be ${distanceText(distance)} apart.`)
      return
    }
    putIn(workshop, tooth)
    view.setState({ apart: 0 })
    setExercise({ step: 'in', tooth, from: copyTurns(noTurns(), frame.state.turns), meets: null })
    say(`In at tooth ${tooth}. Turn by hand through one wheel turn.`)
  }
  const turn = (wanted: 'tooth' | 'rest') => {
    if (exercise.step !== 'in' || turning) return
    const turned = ticksBetween(exercise.from, frame.state.turns)
    const asked = wanted === 'tooth' ? toothTicks(pair) : wheelTicks(pair) - turned
    const { ticks, short } = handTurnOf(pair, exercise.tooth, rowAngleNow(), asked)
    const meets = short ? meetingTooth(pair, turned + ticks) : null
    if (ticks > 0) turnByHand(frame, ticks)
    setExercise({ ...exercise, meets })
    if (meets !== null)
      say(`Before tooth ${meets} has passed the rows would come too near. The hand turn stops in time.`)
    else if (wanted === 'tooth') say(`Tooth ${passed + 1} of ${pair.teeth}.`)
    else say('Turning on through the whole turn.')
  }
  const shown = ended ? TOGETHER : exercise
  return { exercise: shown, passed, done, said, turning, takeOut, choose, leave, put, turn, finish }
}

/** Whole teeth that have passed since the worm was at `from`, followed while it turns. */
function useTeethPassed(from: WormTurns | null, pair: TimedPair): number {
  const { frame } = useWorkshop()
  const [seen, setSeen] = useState<{ from: WormTurns | null; passed: number }>({ from, passed: 0 })
  useEffect(() => {
    if (from === null) return undefined
    const painter = () => {
      const passed = teethPassed(pair, ticksBetween(from, frame.state.turns))
      setSeen((last) => (last.from === from && last.passed === passed ? last : { from, passed }))
    }
    frame.painters.add(painter)
    painter()
    return () => void frame.painters.delete(painter)
  }, [frame, from, pair])
  return seen.from === from ? seen.passed : 0
}

export type Reassembly = ReturnType<typeof useReassembly>
