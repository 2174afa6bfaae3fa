import { type Page, expect, test } from '@playwright/test'
import { open, openPanel } from './support/app.ts'

/** Ends the hand turn that is under way, at once. */
const land = (page: Page): Promise<void> => page.evaluate(() => window.counterturn.advance(60))

/** Goes on by Tab to the control of this name, as far as a person would. */
async function tabTo(page: Page, role: 'button' | 'textbox', name: string): Promise<void> {
  const control = page.getByRole(role, { name, exact: true })
  for (let presses = 0; presses < 60; presses++) {
    if (await control.evaluate((element) => element === document.activeElement)) return
    await page.keyboard.press('Tab')
  }
  await expect(control).toBeFocused()
}

async function openTiming(page: Page): Promise<void> {
  await open(page)
  await page.getByRole('button', { name: 'Gears' }).focus()
  await page.keyboard.press('Enter')
  await page.getByRole('tab', { name: 'Contact' }).focus()
  for (let i = 0; i < 2; i++) await page.keyboard.press('ArrowRight')
  await expect(page.getByRole('tab', { name: 'Timing' })).toBeFocused()
  await expect(page.getByRole('button', { name: 'Take the left wheel out' })).toBeVisible()
}

/** Puts the left wheel in at a tooth, from where the focus is. */
async function putInAt(page: Page, tooth: number): Promise<void> {
  await tabTo(page, 'button', 'Take the left wheel out')
  await page.keyboard.press('Enter')
  const field = page.getByLabel('Put the left wheel in at tooth', { exact: true })
  await expect(field).toBeFocused()
  await page.keyboard.press('ControlOrMeta+A')
  await page.keyboard.type(String(tooth))
  await page.keyboard.press('Enter')
  await expect(field).toHaveValue(String(tooth))
  await tabTo(page, 'button', 'Put it in')
  await page.keyboard.press('Enter')
}

const timing = (page: Page) => page.getByRole('tabpanel', { name: 'Timing' })

test('the outputs are put together by keyboard alone, and a clash is told before it is seen', async ({
  page,
}) => {
  await openTiming(page)
  await expect(timing(page)).toContainText('27°The right rows')

  // Boot cleaner, six rows: 9 - 180 + 18 k degrees, mod 60; k = 0 gives 9 and clashes, k = 2 gives 45 and clears.
  await putInAt(page, 0)
  await expect(page.getByRole('button', { name: 'Turn one tooth' })).toBeFocused()
  await tabTo(page, 'button', 'Turn the rest')
  await page.keyboard.press('Enter')
  await land(page)
  await expect(timing(page)).toContainText(/Stopped in time, at tooth \d+\./)
  const stopped = await page.getByRole('status', { name: 'Worm turns', exact: true }).textContent()
  expect(Number(stopped?.match(/-?[\d.]+/)?.[0])).toBeLessThan(20)

  await tabTo(page, 'button', 'Take it out again')
  await page.keyboard.press('Enter')
  const field = page.getByLabel('Put the left wheel in at tooth', { exact: true })
  await expect(field).toBeFocused()
  await page.keyboard.press('ControlOrMeta+A')
  await page.keyboard.type('2')
  await page.keyboard.press('Enter')
  await tabTo(page, 'button', 'Put it in')
  await page.keyboard.press('Enter')
  await tabTo(page, 'button', 'Turn the rest')
  await page.keyboard.press('Enter')
  await land(page)
  await expect(timing(page)).toContainText(/Clear over a whole turn\./)
  await tabTo(page, 'button', 'Done')
  await page.keyboard.press('Enter')
  await expect(timing(page)).toContainText('45°The right rows')

  await page.getByRole('button', { name: /^Undo/ }).click()
  await expect(timing(page)).toContainText('9°The right rows')
})

test('outputs that clash are told of on the stage while the machine runs, and not when they clear', async ({
  page,
}) => {
  await openTiming(page)
  const note = page.getByRole('note').filter({ hasText: 'The outputs clash.' })
  const turn = page.locator('.turn-button')
  await turn.click()
  await expect(turn).toContainText('Stop')
  await expect(note).toHaveCount(0)
  await turn.click()

  // tooth 0 gives 9 degrees, which clashes (see above); choosing it is one step to undo
  await page.getByRole('radio', { name: /^Tooth 0,/ }).focus()
  await page.keyboard.press('Space')
  await openPanel(page, 'Readings')
  await turn.click()
  await expect(note).toBeVisible()
  await note.getByRole('button', { name: 'Timing' }).click()
  await expect(page.getByRole('tab', { name: 'Timing' })).toHaveAttribute('aria-selected', 'true')
  await note.getByRole('button', { name: 'Stop' }).click()
  await expect(note).toHaveCount(0)
})
