/** How far the worm can still turn, either way, before the rows come too near: told before it happens. */
import { useEffect, useRef } from 'react'
import { clashAhead } from '../../sim/gear/timing.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { rightRowAngle } from './row-angles.ts'
import { meetingText } from './timing-words.ts'
import type { Timing } from './use-timing.ts'

/** Painted with every frame. */
export function FirstMeeting({ timing }: { readonly timing: Timing }) {
  const { frame } = useWorkshop()
  const sentence = useRef<HTMLParagraphElement>(null)
  const { layout, pair, chosen } = timing
  useEffect(() => {
    const painter = () => {
      const ahead = clashAhead(pair, rightRowAngle(layout, frame.state.turns), chosen.offset)
      const text = meetingText(ahead, pair)
      if (sentence.current && sentence.current.textContent !== text) sentence.current.textContent = text
    }
    frame.painters.add(painter)
    painter()
    return () => void frame.painters.delete(painter)
  }, [frame, layout, pair, chosen])
  return <p ref={sentence} />
}
