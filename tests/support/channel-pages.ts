/** Two windows in a test: a channel that delivers at once, a stage with a lesson on it, and a presenter window. */
import { startPresenterEnd } from '../../web/channel/presenter-end.ts'
import { startStageEnd } from '../../web/channel/stage-end.ts'
import { FIRST_MACHINE } from '../../web/file/first-machine.ts'
import { createWorkshop } from '../../web/frame/workshop.ts'
import { openLesson } from '../../web/lesson/play.ts'
import { READY_LESSONS } from '../../web/lesson/ready-lessons.ts'
import type { Lesson } from '../../web/store/lesson.ts'

export const ROOM = '0'.repeat(32)

const open = new Set<DirectChannel>()

/** As the browser's own, without the wait: what is sent is copied, and the sender does not hear it. */
export class DirectChannel extends EventTarget {
  static sent: unknown[] = []
  readonly name: string
  constructor(name: string) {
    super()
    this.name = name
    open.add(this)
  }
  postMessage(message: unknown): void {
    DirectChannel.sent.push(structuredClone(message))
    for (const other of open)
      if (other !== this && other.name === this.name)
        other.dispatchEvent(new MessageEvent('message', { data: structuredClone(message) }))
  }
  close(): void {
    open.delete(this)
  }
}

export function closeChannels(): void {
  open.clear()
  DirectChannel.sent = []
}

/** A page without a window of its own */
export const homeOf = (origin = 'https://example.org') => Object.assign(new EventTarget(), { origin })

export const lessonNamed = (id: string): Lesson => READY_LESSONS.find((lesson) => lesson.id === id)!

export function openStage(lesson: Lesson = lessonNamed('boot-cleaner'), beat = 0) {
  const workshop = createWorkshop(FIRST_MACHINE.machine, 'light')
  openLesson(workshop, lesson, { builtIn: true, mode: 'lead', beat })
  return { workshop, end: startStageEnd(workshop, ROOM, homeOf()) }
}

export function openPresenter() {
  const mirror = createWorkshop(FIRST_MACHINE.machine, 'light')
  return { mirror, end: startPresenterEnd(mirror, ROOM, null, homeOf()) }
}

export type StagePage = ReturnType<typeof openStage>
export type PresenterPage = ReturnType<typeof openPresenter>
