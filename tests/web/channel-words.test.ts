import { expect, test } from 'vitest'
import { FIRST_MACHINE } from '../../web/file/first-machine.ts'
import { createWorkshop } from '../../web/frame/workshop.ts'
import { comingNext, next, openLesson } from '../../web/lesson/play.ts'
import { questionAt } from '../../web/lesson/question-of.ts'
import { READY_LESSONS } from '../../web/lesson/ready-lessons.ts'
import { expectedOf } from '../../web/presenter/expected.ts'
import { nextWords, whereWords } from '../../web/presenter/presenter-words.ts'

const QUESTIONS = READY_LESSONS.flatMap((lesson) =>
  lesson.beats.flatMap(({ id, questions }, beat) =>
    questions.map((_, which) => ({
      name: `${lesson.id}, ${id}/${which}`,
      question: questionAt(lesson, beat, which)!,
    })),
  ),
)

test.each(QUESTIONS)('$name is told with its answer and with each wrong answer once', ({ question }) => {
  const { answer, order, slips } = expectedOf(question)
  const { ask } = question
  expect(answer === null).toBe(ask.kind === 'words')
  if (ask.kind === 'order') expect(order.length).toBe(ask.cards.length)
  else expect(order).toEqual([])
  if (ask.kind === 'choice') expect(ask.options.map(({ text }) => text)).toContain(answer)
  const said = slips.map((slip) => slip.said || slip.sentence)
  expect(new Set(said).size).toBe(said.length)
  expect(said).not.toContain(answer)
  if (ask.kind === 'number' && ask.slips.length > 0) expect(slips.length).toBeGreaterThan(0)
  for (const { sentence } of slips) expect(sentence).not.toBe('')
})

test('what Next does is said before it is done, all through the boot cleaner', () => {
  const workshop = createWorkshop(FIRST_MACHINE.machine, 'light')
  openLesson(workshop, READY_LESSONS[0]!, { builtIn: true, mode: 'lead' })
  const seen = new Set<string>()
  for (let press = 0; press < 100; press++) {
    const words = nextWords(workshop)
    const { kind } = comingNext(workshop)
    seen.add(kind)
    const where = whereWords(workshop)
    expect(where).toMatch(/^Topic \d+ of 14/)
    next(workshop)
    if (kind === 'end') {
      expect(words).toBe('This is the last topic.')
      break
    }
    if (kind === 'topic')
      expect(whereWords(workshop)).toContain(words.replace(/.*topic (\d+)\./, 'Topic $1 of'))
    if (kind === 'reveal') expect(whereWords(workshop)).toContain('Reveal')
    if (kind === 'count') expect(whereWords(workshop)).toContain('Count')
    if (kind === 'question')
      expect(whereWords(workshop)).toContain(words.replace('Next asks ', '').replace('.', ''))
  }
  expect([...seen].sort()).toEqual(['count', 'end', 'light', 'question', 'reveal', 'topic'])
})
