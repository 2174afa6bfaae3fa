/** A learner's record in the browser: answered by keyboard, seen, taken away, erased. */
import { readFile } from 'node:fs/promises'
import { AxeBuilder } from '@axe-core/playwright'
import { type Locator, type Page, expect, test } from '@playwright/test'
import { readRecords } from '../../web/record/records-file.ts'
import { open, watch } from './support/app.ts'
import { readPdf } from './support/pdf.ts'

const MOST_TABS = 80

/** Goes to a control as somebody without a mouse does. */
async function tabTo(page: Page, control: Locator): Promise<void> {
  await expect(control).toBeVisible()
  for (let i = 0; i < MOST_TABS; i++) {
    if (await control.evaluate((element) => element === document.activeElement)) return
    await page.keyboard.press('Tab')
  }
  throw new Error('this control cannot be reached by Tab')
}

async function press(page: Page, control: Locator): Promise<void> {
  await tabTo(page, control)
  await page.keyboard.press('Enter')
}

const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name })

/** Where there is something to count the comparison is asked for; else it is there at once. */
async function compare(page: Page): Promise<void> {
  const next = button(page, 'Next question')
  const now = button(page, /Compare now/)
  await expect(next.or(now)).toBeVisible()
  if (await now.isVisible()) await press(page, now)
  await expect(next).toBeVisible()
}

/** A number, how sure, the commitment, and on to the comparison. */
async function answer(page: Page, text: string, sureness: 1 | 2 | 3): Promise<void> {
  await tabTo(page, page.getByRole('textbox').first())
  await page.keyboard.type(text)
  await tabTo(page, page.getByRole('radio', { name: /^1/ }))
  await page.keyboard.press('Space')
  for (let level = 1; level < sureness; level++) await page.keyboard.press('ArrowRight')
  await press(page, button(page, 'Commit prediction'))
  await compare(page)
}

const record = (page: Page): Locator => page.getByRole('dialog', { name: 'My record' })

async function openRecord(page: Page): Promise<void> {
  await press(page, button(page, /^(This machine|Practice|Set of questions)/).first())
  await press(page, button(page, 'My record'))
  await expect(record(page)).toBeVisible()
}

/** Right and sure, no prediction, wrong and sure: three questions about the machine on the bench. */
async function answerThree(page: Page): Promise<void> {
  await answer(page, '20', 3)
  await press(page, button(page, 'Next question'))
  await press(page, button(page, 'Skip the prediction'))
  await compare(page)
  await press(page, button(page, 'Next question'))
  await answer(page, '12345', 3)
}

async function saved(page: Page, name: string): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent('download'), press(page, button(page, name))])
  return readFile(await download.path(), 'utf8')
}

const keptKeys = (page: Page): Promise<string[]> => page.evaluate(() => Object.keys(localStorage))

test.beforeEach(({ page }) => page.emulateMedia({ reducedMotion: 'reduce' }))

test('three answers by keyboard are seen, taken away, erased and taken in again', async ({ page }) => {
  const seen = await watch(page)
  await open(page, '?quality=low#/predict')
  await answerThree(page)
  await openRecord(page)
  await expect(record(page)).toContainText('sure 3, not yet')
  await expect(record(page)).toContainText('You said 12345 turns')
  await expect(record(page).getByText('Last answers: right')).toHaveCount(1)
  await expect(record(page).getByRole('row', { name: /^3 1.of.2/ })).toBeVisible()

  const json = await saved(page, 'Whole record (JSON)')
  const { answered, problems } = readRecords(json)
  expect(problems).toEqual([])
  expect(answered.map(({ right, sureness }) => [right, sureness])).toEqual([
    [true, 3],
    [null, null],
    [false, 3],
  ])
  const csv = await saved(page, 'Table (CSV)')
  expect(csv.split('\r\n')).toHaveLength(5)
  expect(csv).toContain('12345')
  const statements: unknown = JSON.parse(await saved(page, 'xAPI file'))
  expect(statements).toMatchObject([
    { version: '2.0.0', result: { success: true } },
    { version: '2.0.0', verb: { id: 'http://adlnet.gov/expapi/verbs/attempted' } },
    { version: '2.0.0', result: { success: false } },
  ])

  await press(page, button(page, 'Erase all'))
  await expect(button(page, 'Keep them')).toBeFocused()
  await press(page, record(page).getByRole('button', { name: 'Erase all' }))
  await expect(record(page).getByText('All of it is erased.')).toBeFocused()
  await expect(record(page)).toContainText('Nothing is recorded yet.')
  const left = await keptKeys(page)
  expect(left.filter((key) => /record|practice/.test(key))).toEqual([])

  await page.reload()
  await page.waitForFunction(() => Reflect.has(window, 'counterturn'))
  await openRecord(page)
  await expect(record(page)).toContainText('Nothing is recorded yet.')
  const file = { name: 'my-record.json', mimeType: 'application/json', buffer: Buffer.from(json) }
  await page.getByLabel('Record file').setInputFiles(file)
  await expect(record(page)).toContainText('sure 3, not yet')
  expect(await saved(page, 'Whole record (JSON)')).toBe(json)

  await press(page, button(page, /^Ask me again/))
  await expect(record(page)).toHaveCount(0)
  await expect(page.getByRole('complementary', { name: 'Prediction sheet' })).toContainText('1 of 1')
  expect(seen.complaints).toEqual([])
  expect(
    seen.requests.filter((url) => !url.startsWith(new URL(page.url()).origin) && !/^(data|blob):/.test(url)),
  ).toEqual([])
})

test('the summary prints alone, on one sheet, with the name that was typed', async ({ page }) => {
  await page.addInitScript(() => {
    window.print = () => undefined
  })
  await open(page, '?quality=low#/predict')
  await answerThree(page)
  await openRecord(page)
  await tabTo(page, page.getByRole('textbox', { name: 'Name on your own print' }))
  await page.keyboard.type('Kim')
  await press(page, button(page, 'Print the summary'))
  await expect(page.locator('.printed')).toBeAttached()
  const sheets = await readPdf(await page.pdf({ format: 'A4' }))
  expect(sheets).toHaveLength(1)
  const { words } = sheets[0]!
  expect(words).toContain('My record, Kim')
  expect(words).toContain('Look at again')
  expect(words).toContain('(sure 3)')
  expect(words).not.toMatch(/Erase all|Commit|certificate|score/i)
})

test('what one open page records is in the other', async ({ page, context }) => {
  const other = await context.newPage()
  await other.emulateMedia({ reducedMotion: 'reduce' })
  await open(other, '?quality=low#/predict')
  await openRecord(other)
  await expect(record(other)).toContainText('Nothing is recorded yet.')
  await open(page, '?quality=low#/predict')
  await answer(page, '20', 2)
  await expect(record(other)).toContainText('Last answers: right')
})

test('a browser that keeps nothing says so, and the record lasts as long as the page', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'localStorage', {
      get: () => {
        throw new DOMException('refused', 'SecurityError')
      },
    })
  })
  const { complaints } = await watch(page)
  await open(page, '?quality=low#/predict')
  await answer(page, '20', 2)
  await openRecord(page)
  await expect(record(page)).toContainText('This browser keeps nothing for this page')
  await expect(record(page)).toContainText('Last answers: right')
  expect(complaints).toEqual([])
})

for (const theme of ['light', 'dark'] as const) {
  test(`the record has no accessibility violation, empty or not, ${theme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' })
    await page.addInitScript((chosen) => localStorage.setItem('counterturn.theme', chosen), theme)
    await open(page, '?quality=low#/predict')
    await openRecord(page)
    const faults = async () => {
      const { violations } = await new AxeBuilder({ page }).analyze()
      return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html}`))
    }
    expect(await faults()).toEqual([])
    await page.keyboard.press('Escape')
    await answerThree(page)
    await openRecord(page)
    await record(page).getByText('not met yet').click()
    await button(page, 'Erase all').click()
    expect(await faults()).toEqual([])
    await page.setViewportSize({ width: 320, height: 640 })
    expect(await faults()).toEqual([])
    const wide = await record(page).evaluate((dialog) => dialog.scrollWidth > dialog.clientWidth)
    expect(wide).toBe(false)
  })
}
