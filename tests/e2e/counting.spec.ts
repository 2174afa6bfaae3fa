import { type Page, expect, test } from '@playwright/test'
import { advance, draw, open } from './support/app.ts'

const count = (page: Page, name: string) => page.getByRole('status', { name, exact: true })
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click()

/** A hand turn under way is taken to its end by the model's own time. */
async function pressExactly(page: Page, name: string, times: number): Promise<void> {
  for (let i = 0; i < times; i++) {
    await press(page, name)
    await advance(page, 1)
  }
}

test('twenty worm turns by hand bring both wheels round once, opposite ways', async ({ page }) => {
  await open(page)
  await pressExactly(page, 'One worm turn', 20)
  await expect(count(page, 'Worm turns')).toHaveText('20 turns')
  await expect(count(page, 'Left wheel turns')).toHaveText('1 turn')
  await expect(count(page, 'Right wheel turns')).toHaveText('-1 turn')
  await pressExactly(page, 'One worm turn back', 20)
  await expect(count(page, 'Left wheel turns')).toHaveText('0 turns')
  await pressExactly(page, 'One wheel turn', 1)
  await expect(count(page, 'Worm turns')).toHaveText('20 turns')
  await press(page, 'Zero the counts')
  await expect(count(page, 'Worm turns')).toHaveText('0 turns')
})

test('three starts and 31 teeth: 31 worm turns are three wheel turns, exactly', async ({ page }) => {
  await open(page)
  await page.getByLabel('Worm starts', { exact: true }).fill('3')
  await page.getByLabel('Wheel teeth', { exact: true }).fill('31')
  await pressExactly(page, 'One worm turn', 31)
  await expect(count(page, 'Left wheel turns')).toHaveText('3 turns')
  await expect(count(page, 'Right wheel turns')).toHaveText('-3 turns')
  await pressExactly(page, 'One wheel turn', 1)
  await expect(count(page, 'Worm turns')).toHaveText('41.3333 turns')
  await expect(count(page, 'Left wheel turns')).toHaveText('4 turns')
})

test('quick presses are all counted', async ({ page }) => {
  await open(page)
  for (let i = 0; i < 7; i++) await press(page, 'One worm turn')
  await advance(page, 1)
  await expect(count(page, 'Worm turns')).toHaveText('7 turns')
})

test('the drive runs up to the speed of its setting, and reads it', async ({ page }) => {
  await open(page)
  await page.getByLabel('Setting', { exact: true }).fill('5')
  await press(page, 'Turn')
  await advance(page, 4)
  await expect(count(page, 'Motor speed')).toHaveText(/^50(49|50|51|52|53) r\/min$/)
  await press(page, 'Stop')
  await expect(count(page, 'Motor speed')).toHaveText('0 r/min')
})

test('a count run stops by itself on the mark', async ({ page }) => {
  await open(page)
  await press(page, 'Count turns')
  await page.getByLabel('Turns to count', { exact: true }).fill('7')
  await press(page, 'Count worm marks')
  await advance(page, 4)
  await expect(count(page, 'Worm turns')).toHaveText('7 turns')
  await expect(page.getByRole('button', { name: 'Turn', exact: true })).toBeVisible()
})

test('the whole of it can be done from the keyboard', async ({ page }) => {
  await open(page)
  await page.keyboard.press('2')
  await advance(page, 1)
  await expect(count(page, 'Worm turns')).toHaveText('1 turn')
  await page.keyboard.press('Shift+2')
  await advance(page, 1)
  for (let i = 0; i < 36; i++) await page.keyboard.press('5')
  await advance(page, 1)
  await expect(count(page, 'Worm turns')).toHaveText('0.1 turns')
  await page.keyboard.press('0')
  await page.keyboard.press('Space')
  await advance(page, 1)
  await expect(page.getByRole('button', { name: 'Stop', exact: true })).toBeVisible()
  await page.keyboard.press('Space')
  await expect(page.getByRole('button', { name: 'Turn', exact: true })).toBeVisible()
})

test('nothing turns while the parts are apart, and the page says why', async ({ page }) => {
  await open(page)
  await page.keyboard.press('x')
  await draw(page)
  await expect(page.getByRole('note')).toContainText('The parts are apart')
  await expect(page.getByRole('button', { name: 'Turn', exact: true })).toHaveAttribute(
    'aria-disabled',
    'true',
  )
  await press(page, 'Together')
  await expect(page.getByRole('note')).toHaveCount(0)
})
