import { readFile } from 'node:fs/promises'
import { AxeBuilder } from '@axe-core/playwright'
import { type Locator, type Page, expect, test } from '@playwright/test'
import { open } from './support/app.ts'

const editor = (page: Page): Locator => page.getByRole('dialog', { name: 'Lesson editor' })

async function openEditor(page: Page): Promise<Locator> {
  await page.getByRole('button', { name: 'Lessons', exact: true }).click()
  await page.getByRole('button', { name: 'Lesson editor' }).click()
  return editor(page)
}

const press = async (page: Page, key: string, times: number): Promise<void> => {
  for (let i = 0; i < times; i++) await page.keyboard.press(key)
}

async function faults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html}`))
}

async function saved(page: Page): Promise<string> {
  const waiting = page.waitForEvent('download')
  await editor(page).getByRole('button', { name: 'Save to a file' }).click()
  return readFile(await (await waiting).path(), 'utf8')
}

const openText = (page: Page, name: string, text: string): Promise<void> =>
  page
    .locator('input[aria-label="Lesson file to edit"]')
    .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) })

interface SavedLesson {
  readonly name: string
  readonly beats: readonly {
    readonly title: string
    readonly minutes: number
    readonly stage: object
    readonly questions: readonly object[]
  }[]
}
const lessonIn = (text: string): SavedLesson => JSON.parse(text) as SavedLesson

test('a lesson of fourteen topics is written, put in order, kept, saved and opened again', async ({
  page,
}) => {
  await open(page)
  const sheet = await openEditor(page)
  await sheet.getByRole('button', { name: 'Empty lesson' }).click()
  await sheet.getByLabel('Name of the lesson').fill('Threads and teeth')
  for (let topic = 1; topic <= 14; topic++) {
    if (topic > 1) await sheet.getByRole('button', { name: 'Add a topic' }).click()
    await sheet.getByLabel('Title', { exact: true }).fill(`Topic ${topic} words`)
  }
  await sheet.getByRole('button', { name: 'Ask a question' }).click()
  await sheet.getByLabel('Teeth of each wheel').fill('31')
  await sheet.getByLabel('Starts of the worm').fill('3')
  await expect(sheet.getByText('Answer: 10.333 turns')).toBeVisible()
  await sheet.getByLabel('Minutes', { exact: true }).fill('4.5')

  await sheet.getByRole('button', { name: /^14 Topic 14 words/ }).focus()
  await press(page, 'Alt+ArrowUp', 12)
  await expect(sheet.getByRole('status').first()).toHaveText('Topic 14 words: topic 2 of 14.')
  await sheet.getByRole('button', { name: 'Take out', exact: true }).click()
  await expect(sheet.getByText('13 topics')).toBeVisible()
  await sheet.getByRole('button', { name: 'Undo' }).click()
  await expect(sheet.getByText('14 topics')).toBeVisible()

  const text = await saved(page)
  const { name, beats } = lessonIn(text)
  expect(name).toBe('Threads and teeth')
  const others = Array.from({ length: 12 }, (_, i) => `Topic ${i + 2} words`)
  expect(beats.map(({ title }) => title)).toEqual(['Topic 1 words', 'Topic 14 words', ...others])
  expect(beats[1]).toMatchObject({
    minutes: 4.5,
    questions: [{ family: 'turns-worm', given: { z1: 3, z2: 31, N: 1 } }],
  })

  await open(page)
  await openEditor(page)
  await expect(editor(page).getByText('14 topics')).toBeVisible()
  await openText(page, 'again.json', text)
  expect(await saved(page)).toBe(text)
})

test('what is wrong with a file is told by its place, and the file can be mended', async ({ page }) => {
  await open(page)
  const sheet = await openEditor(page)
  await sheet.getByRole('button', { name: 'Copy of “The boot cleaner”' }).click()
  const text = await saved(page)
  const { beats } = lessonIn(text)
  const bad = JSON.parse(text) as { beats: { title: unknown; minutes: unknown }[] }
  bad.beats[2]!.title = ''
  bad.beats[4]!.minutes = 'five'
  await openText(page, 'bad.json', JSON.stringify(bad))
  await expect(sheet.getByText('beats.2.title')).toBeVisible()
  await expect(sheet.getByText('beats.4.minutes')).toBeVisible()
  await expect(sheet.getByText('1 thing to mend')).toBeVisible()
  await sheet.getByRole('button', { name: /^Show Topic 3, title/ }).click()
  await sheet.getByLabel('Title', { exact: true }).fill('The way of the power')
  await expect(sheet.getByText('to mend before')).toHaveCount(0)
  const mended = lessonIn(await saved(page))
  expect(mended.beats.map(({ title }) => title).length).toBe(beats.length)

  await openText(page, 'none.json', '{"beats": 3}')
  await expect(sheet.getByText('none.json could not be read as a lesson.')).toBeVisible()
  await expect(sheet.getByText('14 topics')).toBeVisible()
})

test('the stage of a topic is shown, changed on the page, and taken; the own machine comes back', async ({
  page,
}) => {
  await open(page)
  await page.getByLabel('Wheel teeth', { exact: true }).fill('33')
  await page.keyboard.press('Tab')
  const sheet = await openEditor(page)
  await sheet.getByRole('button', { name: 'Empty lesson' }).click()
  await expect(sheet.getByText(/wheel teeth 33/)).toBeVisible()
  await sheet.getByRole('button', { name: 'Add a topic' }).click()
  await sheet.getByRole('button', { name: 'Show on the stage' }).click()
  const band = page.getByRole('region', { name: 'Stage of a topic' })
  await expect(band.getByRole('button', { name: 'Take this stage' })).toBeFocused()
  await page.getByLabel('Wheel teeth', { exact: true }).fill('27')
  await page.keyboard.press('Tab')
  await band.getByRole('button', { name: 'Take this stage' }).click()
  await expect(sheet.getByText(/wheel teeth 27/)).toBeVisible()
  await expect(sheet.getByText('2 topics')).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(page.getByLabel('Wheel teeth', { exact: true })).toHaveValue('33')
})

for (const { name, width, height } of [
  { name: 'desktop', width: 1440, height: 900 },
  { name: 'phone', width: 390, height: 844 },
]) {
  for (const theme of ['light', 'dark'] as const) {
    test(`the lesson editor has no accessibility violation, ${theme}, ${name}`, async ({ page }) => {
      await page.setViewportSize({ width, height })
      await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' })
      await page.addInitScript((chosen) => localStorage.setItem('counterturn.theme', chosen), theme)
      await open(page)
      const sheet = await openEditor(page)
      expect(await faults(page)).toEqual([])
      await sheet.getByRole('button', { name: 'Copy of “The boot cleaner”' }).click()
      for (const topic of ['1 How many motors?', '3 The way of the power']) {
        await sheet.getByRole('button', { name: new RegExp(`^${topic.replace('?', '\\?')}`) }).click()
        expect(await faults(page)).toEqual([])
        const toList = sheet.getByRole('button', { name: 'All topics' })
        if (await toList.isVisible()) await toList.click()
      }
    })
  }
}
