import { expect, test } from '@playwright/test'
import { open } from './support/app.ts'

test('an edit is one step of undo, and redo brings it again', async ({ page }) => {
  await open(page)
  const teeth = page.getByLabel('Wheel teeth', { exact: true })
  const ratio = page.getByRole('status', { name: 'Ratio', exact: true })
  await expect(ratio).toHaveText('20 : 1')
  await teeth.fill('30')
  await expect(ratio).toHaveText('30 : 1')
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await expect(ratio).toHaveText('20 : 1')
  await expect(teeth).toHaveValue('20')
  await page.getByRole('button', { name: 'Redo', exact: true }).click()
  await expect(teeth).toHaveValue('30')
})

test('a number that cannot be used is explained, and the last machine stays', async ({ page }) => {
  await open(page)
  const teeth = page.getByLabel('Wheel teeth', { exact: true })
  await teeth.fill('3')
  await expect(teeth).toHaveAttribute('aria-invalid', 'true')
  await expect(page.getByText(/a whole number from 8 to 120/)).toBeVisible()
  await expect(page.getByRole('status', { name: 'Ratio', exact: true })).toHaveText('20 : 1')
})

test('Design takes a length in inches and says what it cannot read', async ({ page }) => {
  await open(page, '#/design')
  const module = page.getByLabel('Axial module', { exact: true })
  await module.fill('0.1 in')
  await module.press('Enter')
  await expect(module).toHaveValue('2.54')
  await module.fill('2 kg')
  await module.press('Enter')
  await expect(module).toHaveAttribute('aria-invalid', 'true')
  await expect(page.getByRole('status', { name: 'Worm turns', exact: true })).toHaveText('0 turns')
})
