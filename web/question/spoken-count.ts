/** A trial for the ear: what may be told while the counts are covered, and each pass for those who count by it. */
import { useEffect } from 'react'
import { wormTurnsValue } from '../../sim/drive/turns.ts'
import type { Hand } from '../../sim/gear/gear-numbers.ts'
import { wheelSense } from '../../sim/gear/wheel-motion.ts'
import type { Trial } from '../../sim/question/family.ts'
import { playTick } from '../frame/tick.ts'
import { useWorkshop } from '../frame/workshop.ts'

const senseWord = (sense: number): string => (sense > 0 ? 'anticlockwise' : 'clockwise')

/** What has turned, and not how far; nor which way, where that is asked. */
export function coveredText(counted: Trial['counted'], sense: 1 | -1, hand: Hand): string {
  if (counted === 'senses') return 'The worm has turned. Each wheel has turned a little.'
  const [left, right] = (['left', 'right'] as const).map((side) => senseWord(sense * wheelSense(side, hand)))
  return `The worm has turned ${senseWord(sense)}, seen from the front. The left wheel has turned a little, ${left} seen from above; the right wheel ${right}.`
}

/** Said when it comes to a stop. */
export function useSpokenStop({ counted }: Trial, isEnd: () => boolean): void {
  const { frame, announcer, document } = useWorkshop()
  useEffect(() => {
    let last = frame.motion
    let wasEnd = isEnd()
    const painter = () => {
      const { motion } = frame
      // without motion it never runs, and stands at the end all the same
      const arrived = isEnd() && !wasEnd
      const stopped = motion === 'still' && last !== 'still'
      last = motion
      wasEnd = isEnd()
      if (!stopped && !arrived) return
      const { hand } = document.store.getState().machine.gearing
      const words = coveredText(counted, frame.sense, hand)
      announcer.say(isEnd() ? `${words} The turn has ended.` : words)
    }
    frame.painters.add(painter)
    return () => void frame.painters.delete(painter)
  }, [frame, announcer, document, counted, isEnd])
}

/** Whole passes that lie between zero and here; a hair is left to rounding. */
const passesAt = (place: number, every: number): number => Math.floor(Math.abs(place) / every + 1e-9)

/** Worm high, wheels low; each wheel is heard on its own side. Our choice of pitches [Hz]. */
const TICKS = {
  worm: { pitch: 1200, side: 0 },
  left: { pitch: 500, side: -0.8 },
  right: { pitch: 500, side: 0.8 },
} as const

/** A tick whenever a mark goes by its pointer, either way. */
export function useTickedPasses(isOn: boolean): void {
  const { frame, document } = useWorkshop()
  useEffect(() => {
    if (!isOn) return undefined
    const { wormStarts, wheelTeeth } = document.store.getState().machine.gearing
    const wormPasses = () => passesAt(wormTurnsValue(frame.state.turns), 1)
    const wheelPasses = () => passesAt(wormTurnsValue(frame.state.turns), wheelTeeth / wormStarts)
    let worm = wormPasses()
    let wheel = wheelPasses()
    const tick = (which: keyof typeof TICKS) => void playTick(TICKS[which])
    const painter = () => {
      const wormNow = wormPasses()
      const wheelNow = wheelPasses()
      if (wormNow !== worm) tick('worm')
      if (wheelNow !== wheel) {
        tick('left')
        tick('right')
      }
      worm = wormNow
      wheel = wheelNow
    }
    frame.painters.add(painter)
    return () => void frame.painters.delete(painter)
  }, [frame, document, isOn])
}

/** A word at each pass, without its number, so that the listener counts; `every` so many worm turns there is one. */
export function useSpokenPasses(words: string, every: number, isOn: boolean): void {
  const { frame, announcer } = useWorkshop()
  useEffect(() => {
    if (!isOn) return undefined
    let last = passesAt(wormTurnsValue(frame.state.turns), every)
    const painter = () => {
      const now = passesAt(wormTurnsValue(frame.state.turns), every)
      if (now > last) announcer.say(words)
      last = now
    }
    frame.painters.add(painter)
    return () => void frame.painters.delete(painter)
  }, [frame, announcer, words, every, isOn])
}
