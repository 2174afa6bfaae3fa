/** The scope by keys, and its pictures taken away. */
import { readFile } from 'node:fs/promises'
import { type Page, expect, test } from '@playwright/test'
import { open, openPanel } from './support/app.ts'

async function save(page: Page, what: string): Promise<Buffer> {
  const waiting = page.waitForEvent('download')
  await page.getByRole('group', { name: 'Save Waves' }).getByRole('button', { name: what }).click()
  return readFile(await (await waiting).path())
}

test('cursors move by keys, and stand where they were when the panel is opened again', async ({ page }) => {
  await open(page)
  await openPanel(page, 'Waves')
  const cursor = page.getByRole('slider', { name: 'Cursor A' })
  await expect(cursor).toHaveAttribute('aria-valuetext', '5.00 ms')
  await cursor.focus()
  await cursor.press('ArrowRight')
  await expect(cursor).toHaveAttribute('aria-valuetext', '5.20 ms')
  await cursor.press('Shift+ArrowRight')
  await expect(cursor).toHaveAttribute('aria-valuetext', '7.20 ms')
  await cursor.press('PageDown')
  await expect(cursor).toHaveAttribute('aria-valuetext', '5.20 ms')
  await expect(page.getByRole('columnheader', { name: /^A\s*5.20 ms/ })).toBeVisible()

  await page.getByRole('button', { name: 'Motor torque' }).click()
  await openPanel(page, 'Torque')
  await openPanel(page, 'Waves')
  await expect(cursor).toHaveAttribute('aria-valuetext', '5.20 ms')
  await expect(page.getByRole('button', { name: 'Motor torque' })).toHaveAttribute('aria-pressed', 'true')
})

test('a picture of the waves is whole by itself, as SVG and as PNG', async ({ page }) => {
  await open(page)
  await openPanel(page, 'Waves')
  const box = (await page.locator('.waves-figure').boundingBox())!
  const svg = (await save(page, 'Picture as SVG')).toString('utf8')
  const [left = 0, , width = 0, height = 0] = /viewBox="([^"]+)"/.exec(svg)![1]!.split(' ').map(Number)
  expect(left).toBeLessThan(0)
  expect(width - box.width).toBeCloseTo(-2 * left, 3)
  expect(svg).toContain('<title')
  expect(svg).toContain('Motor current, A')
  expect(svg).not.toMatch(/class=|var\(--/)

  const png = await save(page, 'Picture as PNG')
  expect(png.subarray(1, 4).toString('latin1')).toBe('PNG')
  expect(png.readUInt32BE(16)).toBe(Math.ceil(3 * width))
  expect(png.readUInt32BE(20)).toBe(Math.ceil(3 * height))
})
