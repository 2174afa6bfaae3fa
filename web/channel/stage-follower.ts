/**
 * Lets the presenter window's own workshop stand as the stage does, from what the stage tells; and knows how far a
 * lesson had come on a stage that went.
 */
import { parseMachine } from '../../sim/machine/file.ts'
import { isSame } from '../file/difference.ts'
import type { Workshop } from '../frame/workshop.ts'
import { parseLesson } from '../lesson/lesson-file.ts'
import { type Lesson, noLesson } from '../store/lesson.ts'
import type { Body, Snapshot } from './message.ts'
import { followSnapshot } from './snapshot.ts'

interface Left {
  readonly lesson: Lesson
  readonly snapshot: Snapshot
}

export function createFollower(mirror: Workshop) {
  let stamp = -1
  let snapshot: Snapshot | null = null
  let left: Left | null = null
  return {
    hearLesson({ run, builtIn, text }: Body<'lesson'>): void {
      const { lesson } = parseLesson(text)
      if (lesson) mirror.lesson.setState({ ...noLesson, lesson, builtIn, run }, true)
    },
    hearMachine({ stamp: now, text }: Body<'machine'>): void {
      const { machine } = parseMachine(text)
      if (!machine) return
      stamp = now
      mirror.document.store.setState({ machine, past: [], future: [], gestureStart: null })
    },
    /** False where it is about a lesson or machine that was not told yet. */
    hearSnapshot(now: Snapshot): boolean {
      if (now.run !== mirror.lesson.getState().run || now.stamp !== stamp) return false
      if (!followSnapshot(mirror, now)) return false
      snapshot = now
      return true
    },
    /** The stage goes: with its page, or because its lesson is closed, which is then over. */
    leave(how: 'lost' | 'closed'): void {
      const { lesson } = mirror.lesson.getState()
      if (how === 'closed') left = null
      // A last sign of life that comes late leads to no snapshot: what is known of that stage stays.
      else if (lesson && snapshot) left = { lesson, snapshot }
      snapshot = null
      stamp = -1
    },
    /** How far it had come, once, where another stage now stands at the same topic of the same lesson. */
    toGoOn(now: Snapshot): Snapshot | null {
      const before = left
      left = null
      if (!before || before.snapshot.from === now.from) return null
      const isThere = before.snapshot.place.beat === now.place.beat
      return isThere && isSame(before.lesson, mirror.lesson.getState().lesson) ? before.snapshot : null
    },
  }
}
