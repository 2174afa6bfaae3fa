import { type Page, expect, test } from '@playwright/test'
import { open, openPanel } from './support/app.ts'

const STEPS = 36

/** Puts the worm at so many degrees and reads how many lines are said to touch. */
async function linesAt(page: Page, degrees: number): Promise<number> {
  await page.evaluate((at) => window.counterturn.placeAt(0, at), degrees)
  const words = await page.getByRole('status', { name: 'Touching now' }).textContent()
  const [, count] = /^(\d+) lines? touch(?:es)? now$/.exec(words ?? '') ?? []
  return Number(count)
}

/** Mean number of lines over one turn of the worm, in even steps. */
async function meanLines(page: Page): Promise<number> {
  let sum = 0
  for (let i = 0; i < STEPS; i++) sum += await linesAt(page, (360 * i) / STEPS)
  return sum / STEPS
}

/** The number that the panel gives beside those words. */
async function fact(page: Page, name: string): Promise<number> {
  const row = page.locator('.gear-fact').filter({ has: page.getByText(name, { exact: true }) })
  return Number(/[\d.]+/.exec((await row.getByRole('definition').textContent()) ?? '')?.[0])
}

const picture = (page: Page) =>
  page
    .getByRole('img', { name: /^Section of worm/ })
    .evaluate((canvas: HTMLCanvasElement) => canvas.toDataURL())

/** A step in 36 may miss a change of the count by its own length, at either end of every line. */
const MISSED = 2 / STEPS

test('Contact opens by keyboard, and the lines follow teeth, hand and profile', async ({ page }) => {
  await open(page, '#/design')
  await page.getByRole('button', { name: 'Gears' }).focus()
  await page.keyboard.press('Enter')
  const tab = page.getByRole('tab', { name: 'Contact' })
  await expect(tab).toHaveAttribute('aria-selected', 'true')
  await expect(page.getByRole('tabpanel', { name: 'Contact' })).toBeVisible()
  await expect(page.getByRole('status', { name: 'Touching now' })).toHaveText('2 lines touch now')
  const few = await fact(page, 'Contact ratio, whole face')
  expect(Math.abs((await meanLines(page)) - few)).toBeLessThan(MISSED)

  const teeth = page.getByLabel('Wheel teeth', { exact: true })
  await teeth.fill('40')
  await teeth.press('Enter')
  await expect.poll(() => fact(page, 'Contact ratio, whole face')).toBeGreaterThan(few)
  const many = await fact(page, 'Contact ratio, whole face')
  expect(Math.abs((await meanLines(page)) - many)).toBeLessThan(MISSED)

  await linesAt(page, 100)
  const rightHand = await picture(page)
  await page.getByLabel('Hand of the worm', { exact: true }).selectOption({ label: 'Left' })
  await expect.poll(() => picture(page)).not.toBe(rightHand)
  expect(Math.abs((await meanLines(page)) - many)).toBeLessThan(MISSED)

  await linesAt(page, 100)
  const straight = await picture(page)
  await page.getByLabel('Thread profile', { exact: true }).selectOption({ label: 'ZI' })
  await expect.poll(() => picture(page)).not.toBe(straight)
  const involute = await fact(page, 'Contact ratio, whole face')
  expect(Math.abs((await meanLines(page)) - involute)).toBeLessThan(MISSED)

  await page.getByRole('button', { name: 'Tooth form and fit', exact: true }).click()
  await page.getByLabel('Wheel form', { exact: true }).selectOption({ label: 'Plain helical' })
  await expect(page.getByRole('status', { name: 'Touching now' })).toHaveText(/^[12] points? touch/)
})

test('a wheel waits in its backlash, and a setting that is off shows on its flank', async ({ page }) => {
  await open(page)
  await openPanel(page, 'Contact')
  const touching = page.getByRole('status', { name: 'Touching now' })
  await expect(touching).toHaveText('2 lines touch now')
  const play = await fact(page, 'Lost motion at the worm')
  for (let degree = 1; degree < play; degree++) {
    await page.keyboard.press('Shift+5')
    await page.evaluate(() => window.counterturn.advance(0))
    await expect(touching).toHaveText('No line touches now')
  }
  await page.keyboard.press('Shift+5')
  await page.evaluate(() => window.counterturn.advance(0))
  await expect(touching).toHaveText(/^[123] lines? touch/)

  await page.getByText('When it is not set right').click()
  await expect(page.getByText(/^The flank bears nearly all over/)).toBeVisible()
  const along = page.getByRole('slider', { name: 'Wheel along its axis' })
  await along.focus()
  for (let i = 0; i < 10; i++) await along.press('ArrowRight')
  await expect(along).toHaveAttribute('aria-valuetext', '0.1 mm up')
  await expect(page.getByText(/^Contact has moved to the edge at the entering side/)).toBeVisible()
  await page.getByRole('button', { name: 'Back to ideal', exact: true }).click()
  await expect(page.getByText(/^The flank bears nearly all over/)).toBeVisible()
})

test('Forces tells what cancels and what is left when the loads differ', async ({ page }) => {
  await open(page)
  await openPanel(page, 'Forces')
  const sideways = page.getByRole('row', { name: /^Sideways/ })
  const along = page.getByRole('row', { name: /^Along/ })
  await expect(sideways).toContainText('cancels')
  const thrust = await along.getByRole('cell').last().textContent()
  await page.getByRole('button', { name: '7 to 5', exact: true }).click()
  await expect(sideways).toContainText('difference')
  await expect(along.getByRole('cell').last()).toHaveText(thrust ?? '')
})
