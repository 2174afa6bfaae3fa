import { readFileSync } from 'node:fs'
import { AxeBuilder } from '@axe-core/playwright'
import { type BrowserContext, type Page, expect, test } from '@playwright/test'
import type { Lesson } from '../../web/store/lesson.ts'
import { open, watch } from './support/app.ts'

const lessonIn = (file: string): Lesson =>
  JSON.parse(readFileSync(new URL(`../../assets/lessons/${file}`, import.meta.url), 'utf8')) as Lesson
const BOOT_CLEANER = lessonIn('boot-cleaner.json')
const CHOOSING_COUNTS = lessonIn('choosing-counts.json')
/** More presses than any lesson takes */
const MOST_PRESSES = 120

async function lead(page: Page, { name }: Lesson): Promise<void> {
  await page.evaluate(() => window.counterturn.look({ sheet: 'lessons' }))
  await page.getByRole('button', { name: `Lead a room: ${name}` }).click()
  await expect(page.getByRole('region', { name: 'Lesson' })).toBeVisible()
}

async function openPresenter(stage: Page): Promise<Page> {
  const coming = stage.context().waitForEvent('page')
  await stage.getByRole('button', { name: 'Presenter window' }).click()
  const presenter = await coming
  await expect(presenter.getByText('Stage connected')).toBeVisible()
  return presenter
}

async function openBoth(context: BrowserContext, lesson: Lesson = BOOT_CLEANER) {
  const stage = await context.newPage()
  await open(stage, '?quality=low')
  await lead(stage, lesson)
  return { stage, presenter: await openPresenter(stage) }
}

interface Place {
  readonly title: string
  readonly step: string
}

/** Where a page says that the lesson is. */
const stagePlace = (page: Page): Promise<Place> =>
  page.evaluate(() => ({
    title: document.querySelector('.lesson-card h1')?.textContent ?? '',
    step: document.querySelector('.lesson-steps [aria-current]')?.textContent ?? '',
  }))
const presenterPlace = (page: Page): Promise<Place> =>
  page.evaluate(() => ({
    title: document.querySelector('main h1')?.textContent ?? '',
    step: document.querySelector('.presenter-steps [aria-current]')?.textContent ?? '',
  }))

async function expectInStep(stage: Page, presenter: Page): Promise<Place> {
  await expect
    .poll(async () => {
      const [here, there] = [await presenterPlace(presenter), await stagePlace(stage)]
      // Where the light walks, the stage tells no step.
      const isSameStep = there.step === '' || here.step === there.step
      return here.title === there.title && isSameStep ? 'in step' : { here, there }
    })
    .toBe('in step')
  return stagePlace(stage)
}

const markup = (page: Page): Promise<string> => page.evaluate(() => document.documentElement.outerHTML)

/** As markup writes a sentence */
const written = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;')

async function expectNoNotes(stage: Page, { beats }: Lesson): Promise<void> {
  const all = await markup(stage)
  for (const note of beats.flatMap(({ notes }) => notes)) expect(all).not.toContain(written(note))
}

const nextButton = (page: Page) => page.locator('.presenter-go, .topic-next')

test('the presenter’s remote leads through the whole lesson, and the stage shows no note', async ({
  context,
}) => {
  test.setTimeout(240_000)
  const { stage, presenter } = await openBoth(context)
  const titles = new Set<string>()
  for (let press = 0; press < MOST_PRESSES; press++) {
    const { title, step } = await expectInStep(stage, presenter)
    titles.add(title)
    const answer = await presenter.locator('.presenter-working').allTextContents()
    const stageText = await markup(stage)
    for (const working of answer)
      if (step === 'Ask' || step === 'Count') expect(stageText).not.toContain(written(working))
    if ((await nextButton(presenter).getAttribute('aria-disabled')) === 'true') break
    const before = await presenter.locator('.presenter-next-words').textContent()
    await presenter.keyboard.press('PageDown')
    await expect(presenter.locator('.presenter-next-words')).not.toHaveText(before ?? '')
  }
  expect([...titles]).toEqual(BOOT_CLEANER.beats.map(({ title }) => title))
  await expectNoNotes(stage, BOOT_CLEANER)
})

test('the stage’s remote leads through the whole lesson, and the presenter window follows', async ({
  context,
}) => {
  test.setTimeout(240_000)
  const { stage, presenter } = await openBoth(context, CHOOSING_COUNTS)
  for (let press = 0; press < MOST_PRESSES; press++) {
    await expectInStep(stage, presenter)
    if ((await nextButton(stage).getAttribute('aria-disabled')) === 'true') break
    await stage.keyboard.press('PageDown')
  }
  const { title } = await stagePlace(stage)
  expect(title).toBe(CHOOSING_COUNTS.beats.at(-1)?.title)
  await expectNoNotes(stage, CHOOSING_COUNTS)
  await presenter.keyboard.press('Home')
  await expect.poll(() => stagePlace(stage)).toMatchObject({ title: CHOOSING_COUNTS.beats[0]?.title })
  await presenter.keyboard.press('PageDown')
  await presenter.keyboard.press('PageUp')
  await expect.poll(() => stagePlace(stage)).toMatchObject({ title: CHOOSING_COUNTS.beats[0]?.title })
})

test('either window is closed and opened again, and the lesson stands where it stood', async ({
  context,
}) => {
  test.setTimeout(240_000)
  const { stage, presenter } = await openBoth(context)
  for (let press = 0; press < 12; press++) {
    const words = await presenter.locator('.presenter-next-words').textContent()
    await presenter.keyboard.press('PageDown')
    await expect(presenter.locator('.presenter-next-words')).not.toHaveText(words ?? '')
  }
  await expectInStep(stage, presenter)
  const before = await presenter.locator('.presenter-next-words').textContent()
  const spent = await presenter.getByRole('timer', { name: 'The whole' }).textContent()
  await presenter.close()
  await expect(stage.getByTitle('Notes and answers, in a window of their own')).toBeVisible()
  await stage.waitForTimeout(7000)
  await expect(stage.getByRole('alert')).toHaveCount(0)
  await stage.keyboard.press('PageDown')
  const second = await openPresenter(stage)
  const there = await expectInStep(stage, second)
  await expect(second.locator('.presenter-next-words')).not.toHaveText(before ?? '')
  await expect(second.getByRole('timer', { name: 'The whole' })).not.toHaveText('0:00')
  expect(spent).not.toBe('')

  const lit = await second.locator('.presenter-next-words').textContent()
  await stage.close()
  await expect(second.getByRole('status').getByText('Stage not connected')).toBeVisible()
  expect(await presenterPlace(second)).toMatchObject({ title: there.title })
  const again = await context.newPage()
  await open(again, '?quality=low')
  await again.evaluate(() => window.counterturn.look({ sheet: 'lessons' }))
  await again.getByRole('button', { name: /^Go on at topic/ }).click()
  await expect(second.getByText('Stage connected')).toBeVisible()
  await expect.poll(() => stagePlace(again)).toEqual(there)
  await expectInStep(again, second)
  await expect(second.locator('.presenter-next-words')).toHaveText(lit ?? '')
})

test('counts and readings are open in the presenter window while the stage covers them', async ({
  context,
}) => {
  const { stage, presenter } = await openBoth(context)
  await presenter.getByRole('button', { name: /^5\s*One turn of the wheel/ }).click()
  const wheel = (page: Page) => page.getByRole('status', { name: 'Left wheel turns', exact: true })
  await presenter.keyboard.press('PageDown')
  await expect.poll(() => stagePlace(stage)).toMatchObject({ step: 'Count' })
  await presenter.getByRole('button', { name: 'One wheel turn', exact: true }).click()
  await stage.evaluate(() => window.counterturn.advance(60))
  await expect(wheel(presenter)).toHaveText('1 turn')
  await expect(wheel(stage)).toHaveText('hidden')
  await expect(presenter.getByText('20 : 1').first()).toBeVisible()
  await expect(stage.getByText('20 : 1')).toHaveCount(0)
})

test('the room check and the cover stand on the stage only while they are wanted', async ({ context }) => {
  const { stage, presenter } = await openBoth(context)
  const check = stage.getByRole('region', { name: 'Room check' })
  await expect(check).toHaveCount(0)
  await presenter.getByRole('button', { name: 'Room check' }).click()
  await expect(check).toBeVisible()
  await presenter.getByRole('button', { name: 'Turn the mark' }).click()
  await expect(stage.locator('.room-turning')).toHaveCount(1)
  await presenter.getByRole('button', { name: 'Tick' }).click()
  await expect(presenter.getByText(/^Played on the stage|^The browser plays nothing/)).toBeVisible()
  await presenter.getByRole('button', { name: 'End the room check' }).click()
  await expect(check).toHaveCount(0)

  const cover = stage.getByRole('button', { name: 'Uncover the stage' })
  await presenter.keyboard.press('.')
  await presenter.getByRole('button', { name: 'Large' }).click()
  await expect(presenter.getByRole('status').getByText('large')).toBeVisible()
  await expect(cover).toHaveCount(0)
  await presenter.keyboard.press('b')
  await expect(cover).toBeVisible()
  await presenter.keyboard.press('b')
  await expect(cover).toHaveCount(0)
  await presenter.keyboard.press('Escape')
  await expect(presenter.getByRole('button', { name: 'Large' })).toHaveAttribute('aria-pressed', 'false')
})

test('of two stages the newer asks which leads', async ({ context }) => {
  const { stage, presenter } = await openBoth(context)
  const newer = await context.newPage()
  await open(newer, '?quality=low')
  await lead(newer, CHOOSING_COUNTS)
  await expect(newer.getByRole('alert')).toContainText('Which of the two shall lead?')
  await expect(stage.getByRole('alert').filter({ hasText: 'lead' })).toHaveCount(0)
  await newer.getByRole('button', { name: 'Lead from here' }).click()
  await expect(presenter.getByText(CHOOSING_COUNTS.name)).toBeVisible()
  await expect(stage.getByRole('alert')).toContainText('Which of the two shall lead?')
  await stage.getByRole('button', { name: 'Leave it there' }).click()
  await expect(stage.getByRole('alert').filter({ hasText: 'lead' })).toHaveCount(0)
})

test('a hostile message changes nothing, in either window', async ({ context }) => {
  const { stage, presenter } = await openBoth(context)
  const seen = [await watch(stage), await watch(presenter)]
  const room = new URL(presenter.url()).hash.slice(1)
  const before = await stagePlace(stage)
  const stranger = await context.newPage()
  await stranger.goto('./presenter.html')
  await stranger.evaluate((name) => {
    const channel = new BroadcastChannel(`counterturn.${name}`)
    const html = '<img src=x onerror="document.title = \'gone\'">'
    const bodies = [
      ['stage', { from: html, since: 0, leads: true, takes: 1 }],
      ['lesson', { from: html, run: 'a', builtIn: true, text: html }],
      ['command', { from: 'x', to: html, command: 'close', value: 0 }],
      ['command', { from: 'x', to: '', command: 'constructor', value: 0 }],
      ['snapshot', { from: html, place: { __proto__: null } }],
    ]
    for (const [kind, body] of bodies) channel.postMessage({ v: 1, seq: 1, kind, body })
    channel.postMessage(html)
    channel.postMessage({ v: 1, seq: Number.NaN, kind: 'command', body: {} })
    channel.postMessage(new ArrayBuffer(1e6))
  }, room)
  await stage.waitForTimeout(500)
  expect(await expectInStep(stage, presenter)).toEqual(before)
  for (const page of [stage, presenter]) expect(await page.locator('img').count()).toBe(0)
  for (const { complaints, refusals } of seen) expect([...complaints, ...refusals]).toEqual([])
})

test('where no second window opens, the notes stand on the page only once they are asked for', async ({
  page,
}) => {
  await page.addInitScript(() => {
    window.open = () => null
  })
  await open(page, '?quality=low')
  await lead(page, BOOT_CLEANER)
  await page.getByRole('button', { name: 'Presenter window' }).click()
  await expect(page.getByRole('alert')).toContainText('The browser opened no second window.')
  await expectNoNotes(page, BOOT_CLEANER)
  await page.getByRole('button', { name: 'Notes on this page' }).click()
  const drawer = page.getByRole('complementary', { name: 'Notes on this page' })
  await expect(drawer).toContainText(BOOT_CLEANER.beats[0]!.notes[0]!)
  await page.keyboard.press('PageDown')
  await page.keyboard.press('PageDown')
  await expect(drawer).toContainText(BOOT_CLEANER.beats[1]!.notes[0]!)
  await drawer.getByRole('button', { name: 'Close the notes' }).click()
  await expectNoNotes(page, BOOT_CLEANER)
})

test('the presenter window without a stage says so', async ({ page }) => {
  await page.goto('./presenter.html')
  await expect(page.getByRole('heading', { name: 'Presenter window' })).toBeVisible()
  await expect(page.getByRole('link', { name: 'Open the stage' })).toBeVisible()
})

const SIZES = [
  { name: 'full screen', width: 1440, height: 900 },
  { name: 'beside the stage', width: 700, height: 900 },
  { name: 'phone', width: 320, height: 640 },
] as const

for (const colorScheme of ['light', 'dark'] as const)
  test(`the presenter window has no accessibility violation, ${colorScheme}`, async ({
    browser,
    baseURL,
  }) => {
    const context = await browser.newContext({
      colorScheme,
      reducedMotion: 'reduce',
      ...(baseURL === undefined ? {} : { baseURL }),
    })
    const { stage, presenter } = await openBoth(context)
    await presenter.getByRole('button', { name: 'Room check' }).click()
    await presenter.locator('summary').click()
    for (const { width, height } of SIZES) {
      await presenter.setViewportSize({ width, height })
      const { violations } = await new AxeBuilder({ page: presenter }).analyze()
      expect(violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html}`))).toEqual([])
      const sideways = await presenter.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      )
      expect(sideways).toBe(0)
    }
    const { violations } = await new AxeBuilder({ page: stage }).include('.room-check').analyze()
    expect(violations.map(({ id }) => id)).toEqual([])
    await context.close()
  })
