/** The exercise of taking the left wheel out and putting it back, step by step. */
import { useEffect, useState } from 'react'
import { useStore } from 'zustand'
import { type WormTurns, copyTurns, noTurns } from '../../sim/drive/turns.ts'
import { hold, turnByHand } from '../frame/frame.ts'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { putIn } from './put-in.ts'
import { distanceAsPutIn, handTurnOf, meetingTooth, toothTicks, wheelTicks } from './reassembly.ts'
import { rightRowAngle } from './row-angles.ts'
import { distanceText } from './timing-words.ts'
import { type Timing, sameTooth } from './use-timing.ts'

export type Exercise =
  | { readonly step: 'together' }
  /** `refused`: distance of the rows [mm] at a tooth at which it does not go in */
  | { readonly step: 'out'; readonly tooth: number; readonly refused: number | null }
  | {
      readonly step: 'in'
      readonly tooth: number
      readonly from: WormTurns
      /** Ticks that the hand has turned since, or is turning to */
      readonly turned: number
      /** Tooth before which it stopped short */
      readonly meets: number | null
    }

/** How far the parts stand apart when case and wheels are off and the rest is still on. */
const WHEELS_OFF = 0.3

const TOGETHER: Exercise = { step: 'together' }

export function useReassembly(timing: Timing) {
  const workshop = useWorkshop()
  const { frame, view, readout, announcer } = workshop
  const [exercise, setExercise] = useState(TOGETHER)
  const apart = useView((now) => now.apart)
  const turning = useStore(readout, (now) => now.motion !== 'still')
  const { pair, layout, chosen } = timing
  const rowAngleNow = () => rightRowAngle(layout, frame.state.turns)

  // parts that somebody puts together otherwise, and a tooth that is chosen otherwise, end the exercise
  const ended =
    (exercise.step === 'out' && apart === 0) ||
    (exercise.step === 'in' && !sameTooth(pair, exercise.tooth, chosen.toothOffset))
  useEffect(() => {
    if (ended) setExercise(TOGETHER)
  }, [ended])

  const takeOut = () => {
    hold(frame)
    view.setState({ apart: WHEELS_OFF })
    setExercise({ step: 'out', tooth: chosen.toothOffset, refused: null })
    announcer.say('The left wheel is out. Choose a tooth and put it in.')
  }
  const choose = (tooth: number) => setExercise({ step: 'out', tooth, refused: null })
  const leave = () => {
    view.setState({ apart: 0 })
    setExercise(TOGETHER)
    announcer.say('The left wheel is back at the tooth where it was.')
  }
  const put = () => {
    if (exercise.step !== 'out') return
    const { tooth } = exercise
    const distance = distanceAsPutIn(pair, tooth, rowAngleNow())
    if (distance <= pair.need) {
      setExercise({ step: 'out', tooth, refused: distance })
      announcer.say(`It does not go in at tooth ${tooth}. The rows would be ${distanceText(distance)} apart.`)
      return
    }
    putIn(workshop, tooth)
    view.setState({ apart: 0 })
    setExercise({ step: 'in', tooth, from: copyTurns(noTurns(), frame.state.turns), turned: 0, meets: null })
    announcer.say(`In at tooth ${tooth}. Turn by hand through one wheel turn.`)
  }
  const turn = (wanted: number) => {
    if (exercise.step !== 'in' || turning) return
    const { ticks, short } = handTurnOf(pair, exercise.tooth, rowAngleNow(), wanted)
    const turned = exercise.turned + ticks
    const meets = short ? meetingTooth(pair, turned) : null
    if (ticks > 0) turnByHand(frame, ticks)
    setExercise({ ...exercise, turned, meets })
    if (meets !== null) announcer.say(`Rows would meet at tooth ${meets}. The hand turn stops before it.`)
    else if (turned < wheelTicks(pair))
      announcer.say(`Tooth ${Math.round(turned / toothTicks(pair))} of ${pair.teeth} passed.`)
    else announcer.say(`Clear over a whole turn. The rows keep ${distanceText(chosen.distance)}.`)
  }
  return { exercise: ended ? TOGETHER : exercise, turning, takeOut, choose, leave, put, turn }
}

export type Reassembly = ReturnType<typeof useReassembly>
