import { readFile } from 'node:fs/promises'
import { type Page, expect, test } from '@playwright/test'
import { open, openPanel } from './support/app.ts'
import { readPdf } from './support/pdf.ts'

const POINTS_PER_MM = 72 / 25.4

async function openModels(page: Page): Promise<void> {
  await openPanel(page, 'Models')
  await expect(page.getByRole('heading', { name: 'Models to take away' })).toBeVisible()
}

/** Prints into a file instead of a printer, while the sheet is there. */
async function printed(page: Page, format: 'A4' | 'Letter') {
  await page.evaluate(() => {
    window.print = () => undefined
  })
  await page.getByRole('button', { name: 'Print data sheet' }).click()
  await expect(page.locator('.printed')).toBeAttached()
  return readPdf(await page.pdf({ format, preferCSSPageSize: false }))
}

test('the data sheet prints on two pages with the right numbers, and leaves the page as it was', async ({
  page,
}) => {
  await open(page)
  await openModels(page)
  const sheets = await printed(page, 'A4')
  expect(sheets).toHaveLength(2)
  for (const { width, height } of sheets) {
    expect(Math.abs(width - 210 * POINTS_PER_MM)).toBeLessThan(1)
    expect(Math.abs(height - 297 * POINTS_PER_MM)).toBeLessThan(1)
  }
  const { words } = sheets[1]!
  // m 2, 1 start, 20 teeth, q 10, 20 degrees, full depth: by hand from the handbook's equations.
  expect(words).toContain('Number of starts z 1 1 ')
  expect(words).toContain('Number of teeth z 2 20 ')
  expect(words).toContain('Axial module m x 2.000 mm')
  expect(words).toContain('Lead p z 6.2832 mm') // 2 pi
  expect(words).toContain('Lead angle γ 5.7106°') // atan 1/10
  expect(words).toContain('Tip diameter d a1 24.000 mm')
  expect(words).toContain('Throat diameter d a2 44.000 mm')
  expect(words).toContain('Centre distance a 30.000 mm')
  expect(words).toContain('licensed practice')
  expect(sheets[0]!.words).toContain('Boot cleaner')

  await page.evaluate(() => dispatchEvent(new Event('afterprint')))
  await expect(page.locator('.printed')).not.toBeAttached()
  await expect(page.getByRole('button', { name: 'Turn', exact: false }).first()).toBeVisible()
})

test('a sheet follows the teeth that were set', async ({ page }) => {
  await open(page, '#/design')
  const teeth = page.getByLabel('Wheel teeth', { exact: true })
  await teeth.fill('41')
  await teeth.press('Enter')
  await openModels(page)
  const sheets = await printed(page, 'Letter')
  expect(sheets).toHaveLength(2)
  expect(sheets[1]!.words).toMatch(/Number of teeth z 2 41 /)
  expect(sheets[1]!.words).toContain('Centre distance a 51.000 mm')
})

test('a part is saved in millimetres, from a thread of its own', async ({ page }) => {
  await open(page)
  await openModels(page)
  const wait = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save STL (mm)' }).click()
  const download = await wait
  expect(download.suggestedFilename()).toMatch(/mm\.stl$/)
  const bytes = await readFile(await download.path())
  const triangles = bytes.readUInt32LE(80)
  expect(triangles).toBeGreaterThan(1000)
  expect(bytes.length).toBe(84 + 50 * triangles)
})

test('giving up a file leaves the focus beside the buttons, and leaving the panel gives up nothing', async ({
  page,
}) => {
  await open(page)
  await openModels(page)
  const said = page.locator('.models-progress').getByRole('status')
  await page.getByRole('button', { name: 'Save 3MF (mm)' }).click()
  await page.getByRole('button', { name: 'Cancel' }).click()
  await expect(said).toContainText('was not made, as you asked')
  await expect(said).toBeFocused()

  const wait = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save 3MF (mm)' }).click()
  await openPanel(page, 'Readings')
  expect((await wait).suggestedFilename()).toMatch(/mm\.3mf$/)
})
