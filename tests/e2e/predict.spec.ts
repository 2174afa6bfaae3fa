import { expect, test } from '@playwright/test'
import { advance, open } from './support/app.ts'

test('commit first, then the count decides', async ({ page }) => {
  await open(page)
  await page.getByRole('link', { name: 'Predict', exact: true }).click()
  const worm = page.getByRole('status', { name: 'Left wheel turns', exact: true })
  await expect(worm).toHaveText('hidden')
  await expect(page.getByRole('status', { name: 'Ratio', exact: true })).toHaveCount(0)
  await page.keyboard.press('2')
  await page.getByRole('textbox', { name: /at which worm turn/i }).fill('12')
  await page.getByRole('radio', { name: 'The other way' }).check()
  await page.getByRole('radio', { name: /^2/ }).check()
  await page.getByRole('button', { name: 'Commit prediction' }).click()
  await page.getByRole('button', { name: 'Turn until the mark is back' }).click()
  await advance(page, 60)
  await expect(page.getByRole('complementary', { name: 'Prediction sheet' })).toContainText('20')
  await expect(worm).toHaveText('1 turn')
  await expect(page.getByRole('button', { name: 'Commit prediction' })).toHaveCount(0)
})

test('Enter in the number goes on to the next question and commits nothing; each step begins at its heading', async ({
  page,
}) => {
  await open(page, '#/predict')
  const number = page.getByRole('textbox', { name: /at which worm turn/i })
  await number.fill('20')
  await number.press('Enter')
  await expect(page.getByRole('radio', { name: 'As the left one' })).toBeFocused()
  const commit = page.getByRole('button', { name: 'Commit prediction' })
  await expect(commit).toBeVisible()
  await commit.press('Enter')
  await expect(page.getByRole('heading', { name: 'Count the turns of the worm' })).toBeFocused()
})
