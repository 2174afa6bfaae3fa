/** Lessons in the browser: led by one key from the first topic to the last, worked through alone, kept, opened, refused. */
import { readFileSync } from 'node:fs'
import { AxeBuilder } from '@axe-core/playwright'
import { type Page, expect, test } from '@playwright/test'
import { spokenAnswer } from '../../web/lesson/lesson-words.ts'
import { questionAt } from '../../web/lesson/question-of.ts'
import type { Lesson } from '../../web/store/lesson.ts'
import { open, watch } from './support/app.ts'

const lessonOf = (id: string): Lesson =>
  JSON.parse(readFileSync(`assets/lessons/${id}.json`, 'utf8')) as Lesson
const BOOT = lessonOf('boot-cleaner')
const COUNTS = lessonOf('choosing-counts')

const card = (page: Page) => page.getByRole('region', { name: 'Lesson', exact: true })
const log = (page: Page) => page.getByRole('log', { name: 'What has turned' })
const count = (page: Page, name: string) => page.getByRole('status', { name, exact: true })

type Way = 'Lead a room' | 'Work through it alone'

async function openLesson(page: Page, { name }: Lesson, way: Way): Promise<void> {
  await page.getByRole('button', { name: 'Lessons', exact: true }).click()
  await page.getByRole('button', { name: `${way}: ${name}` }).click()
  await expect(card(page)).toBeVisible()
}

/** All that can be read on the page, or is read out: text, names, titles, values of fields. */
const everything = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const attributes = ['aria-label', 'title', 'alt', 'placeholder', 'aria-valuetext', 'value']
    const named = [...document.querySelectorAll('*')].flatMap((element) =>
      attributes.map((name) => element.getAttribute(name) ?? ''),
    )
    return [document.body.textContent ?? '', document.title, ...named].join('\n')
  })

/** What must not stand anywhere while the question is asked. */
function secrets(lesson: Lesson, beat: number, place: number): string[] {
  const question = questionAt(lesson, beat, place)
  if (!question) throw new Error(`nothing is asked at ${beat}, ${place}`)
  const { ask, working, watch: explained } = question
  if (ask.kind === 'words') return []
  const sentences = ask.slips.map(({ sentence }) => sentence)
  const shown = ask.kind === 'choice' ? [] : [spokenAnswer(question) ?? '']
  // a plain number, or an angle of two digits, stands on the page for other reasons too
  const telling = [...shown, working, ...sentences].filter((text) => text.length > 4)
  return [...telling, explained?.words ?? ''].filter((text) => text !== '' && !question.text.includes(text))
}

interface Went {
  readonly beat: number
  readonly question: number
  readonly step: string
}

/** Where the page says that it is. */
function placeIn(text: string, { beats }: Lesson): Went {
  const [, beat = '0'] = /Topic (\d+) of/.exec(text) ?? []
  const [, question = '1'] = /question (\d+) of/.exec(text) ?? []
  const [, step = 'show'] =
    /\b(Ask|Count|Reveal)\b/.exec(text.replace(beats[Number(beat) - 1]?.title ?? '', '')) ?? []
  return { beat: Number(beat) - 1, question: Number(question) - 1, step }
}

for (const lesson of [BOOT, COUNTS]) {
  test(`Page down alone leads ${lesson.name} from the first topic to the last, and Ask keeps its answers`, async ({
    page,
  }) => {
    test.setTimeout(240_000)
    const seen = await watch(page)
    await open(page, '?quality=low')
    await page.keyboard.press('p')
    await openLesson(page, lesson, 'Lead a room')
    const revealed = new Set<string>()
    for (let presses = 0; presses < 100; presses++) {
      const said = await log(page).innerText()
      if (said === 'This is the last topic.') break
      const { beat, question, step } = placeIn(said, lesson)
      if (step === 'Ask' || step === 'Count') {
        const all = await everything(page)
        for (const secret of secrets(lesson, beat, question)) expect(all).not.toContain(secret)
        for (const note of lesson.beats[beat]!.notes) expect(all).not.toContain(note)
        await expect(count(page, 'Left wheel turns')).toHaveText('hidden')
        await expect(card(page).locator('[data-right="true"]')).toHaveCount(0)
      }
      if (step === 'Reveal') {
        const asked = questionAt(lesson, beat, question)!
        const answer = spokenAnswer(asked)
        if (answer !== null && asked.ask.kind !== 'order') await expect(card(page)).toContainText(answer)
        await expect(count(page, 'Left wheel turns')).not.toHaveText('hidden')
        revealed.add(`${beat}/${question}`)
      }
      await page.keyboard.press('PageDown')
      await expect(log(page)).not.toHaveText(said)
    }
    await expect(log(page)).toHaveText('This is the last topic.')
    const asked = lesson.beats.flatMap(({ questions }, beat) =>
      questions.map((_, place) => `${beat}/${place}`),
    )
    expect([...revealed]).toEqual(asked)
    expect(seen.complaints).toEqual([])
  })
}

test('going back finds what was revealed, Home the first topic, and arrows turn the worm again afterwards', async ({
  page,
}) => {
  await open(page, '?quality=low')
  await page.keyboard.press('p')
  await openLesson(page, BOOT, 'Lead a room')
  await page.getByRole('button', { name: '1 of 14' }).click()
  await page.getByRole('button', { name: /One turn of the wheel/ }).click()
  await expect(page.getByRole('button', { name: '5 of 14' })).toBeFocused()
  for (const step of ['Count', 'Reveal', 'Topic 6']) {
    await page.keyboard.press('ArrowRight')
    await expect(log(page)).toContainText(step)
  }
  await page.keyboard.press('ArrowLeft')
  await expect(log(page)).toContainText('Topic 5 of 14: One turn of the wheel. Reveal. 20 turns.')
  await page.keyboard.press('Home')
  await expect(log(page)).toContainText('Topic 1 of 14')
  await page.getByRole('button', { name: 'Close the lesson' }).click()
  await expect(page.getByRole('heading', { name: /Twenty turns in/ })).toBeVisible()
  await page.keyboard.press('ArrowRight')
  await expect(count(page, 'Worm turns')).toHaveText(/0\.0027 turns/)
})

test('in Ask the machine is held, in Count the space bar turns it to the end with the counters covered', async ({
  page,
}) => {
  await open(page, '?quality=low')
  await openLesson(page, BOOT, 'Lead a room')
  await page.getByRole('button', { name: '1 of 14' }).click()
  await page.getByRole('button', { name: /Which way round/ }).click()
  await page.getByRole('button', { name: 'One worm turn', exact: true }).click()
  await card(page).getByRole('heading', { level: 1 }).click()
  await page.locator('body').press('PageDown')
  await page.locator('body').press('Space')
  await page.evaluate(() => window.counterturn.advance(30))
  await expect(card(page).getByRole('button', { name: /Turn it again/ })).toBeVisible()
  await expect(count(page, 'Worm turns')).toHaveText('hidden')
  await page.locator('body').press('PageDown')
  await expect(count(page, 'Worm turns')).toHaveText(/0\.25 turns/)
})

test('alone by keyboard through three topics; answers stay, and are recorded', async ({ page }) => {
  await open(page, '?quality=low')
  await page.keyboard.press('p')
  await openLesson(page, BOOT, 'Work through it alone')
  await card(page).getByRole('radio', { name: 'Two, one for each brush' }).press('Space')
  await card(page).getByRole('radio', { name: /^3/ }).press('Space')
  await card(page).getByRole('button', { name: 'Commit' }).press('Enter')
  await expect(card(page).getByRole('heading', { name: /How many motors turn/ })).toBeFocused()
  await expect(card(page)).toContainText('Not yet.')
  await card(page).getByRole('button', { name: 'Next topic' }).press('Enter')

  await card(page).getByRole('button', { name: 'Go on without an answer' }).press('Enter')
  await expect(card(page)).toContainText('No prediction.')
  await card(page).getByRole('button', { name: 'Next topic' }).press('Enter')

  await card(page).getByRole('radio', { name: 'It lies within the limits' }).press('Space')
  await card(page).getByRole('button', { name: 'Commit' }).press('Enter')
  await expect(card(page)).toContainText('Right.')
  await page.locator('body').press('PageUp')
  await expect(card(page)).toContainText('No prediction.')
  await page.locator('body').press('PageUp')
  await expect(card(page).getByRole('row', { name: /Predicted/ })).toContainText('Two, one for each brush')
  await expect(card(page).getByRole('button', { name: 'Commit' })).toHaveCount(0)

  await page.getByRole('button', { name: 'Close the lesson' }).click()
  await page.getByRole('button', { name: 'Lessons', exact: true }).click()
  await page.getByRole('button', { name: 'My record' }).click()
  await expect(page.getByRole('dialog')).toContainText('Reading at a socket')
})

test('after a reload in the middle the own machine is there, and the lesson is gone on with at its topic', async ({
  page,
}) => {
  await open(page, '?quality=low')
  await page.getByRole('button', { name: 'One tooth more' }).click()
  await expect(page.getByRole('heading', { name: /21 turns in/ })).toBeVisible()
  await openLesson(page, COUNTS, 'Lead a room')
  for (let presses = 0; presses < 3; presses++) {
    const said = await log(page).innerText()
    await page.locator('body').press('PageDown')
    await expect(log(page)).not.toHaveText(said)
  }
  await expect(log(page)).toContainText('Topic 3 of 12')
  await page.waitForTimeout(700)
  await page.reload()
  await expect(page.getByRole('heading', { name: /21 turns in/ })).toBeVisible()
  await page.getByRole('button', { name: 'Lessons', exact: true }).click()
  await page.getByRole('button', { name: /Go on at topic 3 of 12/ }).click()
  await expect(log(page)).toContainText('Topic 3 of 12: How far apart? Ask.')
})

test('a file that is no lesson is told by its places and opens nothing; a good one of one’s own opens', async ({
  page,
}) => {
  await open(page, '?quality=low')
  await page.getByRole('button', { name: 'Lessons', exact: true }).click()
  const dialog = page.getByRole('dialog')
  const file = page.getByLabel('Lesson file')
  const bad = structuredClone(BOOT) as unknown as {
    beats: { minutes: unknown; questions: { given: { z1: unknown } }[] }[]
  }
  bad.beats[2]!.minutes = 'four'
  bad.beats[4]!.questions[0]!.given.z1 = 'one'
  await file.setInputFiles({
    name: 'bad.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(bad)),
  })
  await expect(dialog).toContainText('bad.json could not be read as a lesson.')
  await expect(dialog).toContainText('beats.2.minutes')
  await expect(dialog).toContainText('beats.4.questions.0.given.z1')
  await file.setInputFiles({
    name: 'torn.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"id": '),
  })
  await expect(dialog).toContainText('must be JSON; line 1')
  await expect(page.getByRole('region', { name: 'Lesson', exact: true })).toHaveCount(0)
  const own = { ...BOOT, id: 'mine', name: 'My own' }
  await file.setInputFiles({
    name: 'own.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(own)),
  })
  await page.getByRole('button', { name: 'Lead a room: My own' }).click()
  await expect(card(page)).toContainText('My own')
  await page.evaluate(() => window.counterturn.ready)
  await page.getByRole('button', { name: 'Close the lesson' }).click()
  await page.getByRole('button', { name: 'Lessons', exact: true }).click()
  await expect(page.getByRole('button', { name: 'Lead a room: My own' })).toBeVisible()
})

test('a link to a topic opens the lesson there, alone', async ({ page }) => {
  const link = JSON.stringify({
    v: 3,
    base: 'boot-cleaner',
    set: { lesson: { id: 'boot-cleaner', beat: 'one-wheel-turn' } },
  })
  await open(page, `?quality=low#/demonstrate?s=${encodeURIComponent(link)}`)
  await expect(card(page).getByRole('heading', { name: 'One turn of the wheel' })).toBeVisible()
  await expect(card(page).getByRole('button', { name: 'Commit' })).toBeVisible()
  await expect(count(page, 'Left wheel turns')).toHaveText('hidden')
})

for (const theme of ['light', 'dark'] as const) {
  test(`the sheet and the card break no rule of accessibility, ${theme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: theme })
    await open(page, '?quality=low')
    await page.keyboard.press('p')
    await page.getByRole('button', { name: 'Lessons', exact: true }).click()
    await expect(page.getByRole('dialog')).toContainText('Work through it alone')
    const sheet = await new AxeBuilder({ page }).include('dialog[open]').analyze()
    expect(sheet.violations).toEqual([])
    await page.getByRole('button', { name: 'Work through it alone: The boot cleaner' }).click()
    await card(page).getByRole('radio', { name: 'One', exact: true }).check()
    const asking = await new AxeBuilder({ page }).include('.lesson-card').include('.transport').analyze()
    expect(asking.violations).toEqual([])
    await card(page).getByRole('button', { name: 'Commit' }).click()
    const compared = await new AxeBuilder({ page }).include('.lesson-card').analyze()
    expect(compared.violations).toEqual([])
    await openLed(page)
    const led = await new AxeBuilder({ page }).include('.lesson-card').analyze()
    expect(led.violations).toEqual([])
  })
}

/** The first lesson led, with its first answer revealed. */
async function openLed(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Close the lesson' }).click()
  await openLesson(page, BOOT, 'Lead a room')
  await page.locator('body').press('PageDown')
  await expect(log(page)).toContainText('Reveal')
}

test('nothing of a lesson scrolls sideways on a phone, nor at 320', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await open(page, '?quality=low')
  await openLesson(page, BOOT, 'Work through it alone')
  for (const width of [390, 320]) {
    await page.setViewportSize({ width, height: 844 })
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBe(width)
  }
})
