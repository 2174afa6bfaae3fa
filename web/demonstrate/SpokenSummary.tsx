/** What has turned and how far, spoken when it stops and at each turn of a wheel, and readable at any time. */
import { useEffect, useRef } from 'react'
import { useStore } from 'zustand'
import { wholeWheelTurns } from '../../sim/drive/turns.ts'
import { isCovered } from '../frame/asking.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { stageText } from '../instrument/words.ts'

export function SpokenSummary() {
  const workshop = useWorkshop()
  const spoken = useStore(workshop.announcer.store, (announcement) => announcement)
  const last = useRef({ motion: workshop.frame.motion, wheel: 0 })
  useEffect(() => {
    const { frame, announcer, document } = workshop
    const painter = () => {
      const { gearing } = document.store.getState().machine
      const { turns } = frame.state
      const wheel = wholeWheelTurns(turns, gearing.wormStarts, gearing.wheelTeeth)
      const stopped = frame.motion === 'still' && last.current.motion !== 'still'
      const passed = frame.motion !== 'still' && wheel !== last.current.wheel
      last.current.motion = frame.motion
      last.current.wheel = wheel
      if (isCovered(workshop) || !(stopped || passed)) return
      announcer.say(stageText(turns, gearing.wormStarts, gearing.wheelTeeth, gearing.hand))
    }
    frame.painters.add(painter)
    return () => void frame.painters.delete(painter)
  }, [workshop])
  return (
    <div className="unseen" role="log" aria-live="polite" aria-label="What has turned">
      <p key={spoken.nonce}>{spoken.text}</p>
    </div>
  )
}
