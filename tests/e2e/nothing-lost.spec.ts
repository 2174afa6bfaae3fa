import { readFile } from 'node:fs/promises'
import { expect, test } from '@playwright/test'
import { advance, open } from './support/app.ts'

test('a machine and its moment come back after the page is closed', async ({ page }) => {
  await open(page)
  await page.getByLabel('Wheel teeth', { exact: true }).fill('31')
  await page.keyboard.press('Tab')
  await page.getByRole('button', { name: 'One worm turn', exact: true }).click()
  await advance(page, 1)
  await page.waitForTimeout(800)
  await open(page)
  await expect(page.getByLabel('Wheel teeth', { exact: true })).toHaveValue('31')
  await expect(page.getByRole('status', { name: 'Worm turns', exact: true })).toHaveText('1 turn')
})

test('a file is saved, opened again, and a bad one changes nothing', async ({ page }) => {
  await open(page)
  await page.getByLabel('Wheel teeth', { exact: true }).fill('33')
  await page.getByRole('button', { name: /^Machine/ }).click()
  const waiting = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save to a file' }).click()
  const path = await (await waiting).path()
  const text = await readFile(path, 'utf8')
  expect(JSON.parse(text)).toMatchObject({ format: 'counterturn-machine', gearing: { wheelTeeth: 33 } })

  const chooser = page.locator('input[type="file"]')
  await chooser.setInputFiles({
    name: 'bad.json',
    mimeType: 'application/json',
    buffer: Buffer.from(text.replace('"wheelTeeth": 33', '"wheelTeeth": "many"')),
  })
  await expect(page.getByText('gearing.wheelTeeth')).toBeVisible()
  await chooser.setInputFiles({
    name: 'good.json',
    mimeType: 'application/json',
    buffer: Buffer.from(text.replace('"wheelTeeth": 33', '"wheelTeeth": 27')),
  })
  await page.keyboard.press('Escape')
  await expect(page.getByLabel('Wheel teeth', { exact: true })).toHaveValue('27')
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await expect(page.getByLabel('Wheel teeth', { exact: true })).toHaveValue('33')
})

test('a damaged link says so and opens the default machine', async ({ page }) => {
  await open(page, '#/demonstrate?s=not-a-link')
  await expect(page.getByText(/this link could not be read/i)).toBeVisible()
  await expect(page.getByLabel('Wheel teeth', { exact: true })).toHaveValue('20')
})
