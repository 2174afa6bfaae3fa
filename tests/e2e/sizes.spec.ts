/** What has to fit: every control whole and large enough to hit, and what is opened in view. */
import { type Page, expect, test } from '@playwright/test'
import { open } from './support/app.ts'

const LEAST = 44

/** Buttons and links of bar, caption and transport that are cut off, or smaller than a finger needs. */
const unfit = (page: Page): Promise<string[]> =>
  page.evaluate((least) => {
    const found: string[] = []
    for (const control of document.querySelectorAll(
      '.bar :is(a, button), .caption button, .transport button',
    )) {
      const { left, right, width, height } = control.getBoundingClientRect()
      if (!control.checkVisibility()) continue
      const fits = left >= 0 && right <= innerWidth && width >= least && height >= least
      if (!fits) found.push(`${control.textContent}: ${left} to ${right}, ${width} by ${height}`)
    }
    return found
  }, LEAST)

for (const [width, height] of [
  [1440, 900],
  [1200, 800],
  [1024, 768],
  [768, 1024],
  [390, 844],
  [320, 700],
] as const) {
  test(`bar, caption and transport fit at ${width} by ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height })
    await open(page, '')
    expect(await unfit(page)).toEqual([])
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width)
  })
}

test('the transport is one row wherever the readings stand beside the machine', async ({ page }) => {
  for (const width of [1440, 1260, 1259, 1200]) {
    await page.setViewportSize({ width, height: 800 })
    if (width === 1440) await open(page, '')
    const tops = await page
      .locator('.transport > div')
      .evaluateAll((groups) => new Set(groups.map((group) => group.getBoundingClientRect().top)).size)
    expect(tops, `rows at ${width}`).toBe(1)
  }
})

for (const width of [1440, 1280, 1024]) {
  test(`in Large nothing of the bar is cut off at ${width}`, async ({ page }) => {
    await page.setViewportSize({ width, height: 768 })
    await open(page, '')
    await page.keyboard.press('l')
    await expect(page.locator('.app')).toHaveAttribute('data-large', 'true')
    const right = await page.locator('.bar select').evaluate((pace) => pace.getBoundingClientRect().right)
    expect(right).toBeLessThanOrEqual(width)
  })
}

test('on a phone a panel that is opened comes into view', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await open(page, '')
  const button = page.getByRole('button', { name: 'Panel', exact: true })
  await button.click()
  await page.evaluate(() => scrollTo(0, 0))
  await expect(page.getByRole('tablist', { name: 'Panel' })).toHaveCount(0)
  await button.evaluate((element: HTMLElement) => element.click())
  await expect(page.getByRole('tablist', { name: 'Panel' })).toBeInViewport({ ratio: 1 })
})

test('teeth that a given centre distance forbids can have the axes follow, as one step to undo', async ({
  page,
}) => {
  await open(page, '#/design')
  await page.getByRole('button', { name: 'Tooth form and fit' }).click()
  const axes = page.getByLabel('Axes given by', { exact: true })
  await axes.selectOption({ label: 'Distance' })
  const teeth = page.getByLabel('Wheel teeth', { exact: true })
  await teeth.fill('25')
  await expect(page.getByText('Centre distance must be from 33 to 37 mm')).toBeVisible()
  await page.getByRole('button', { name: 'Let the centre distance follow' }).click()
  await expect(teeth).toBeFocused()
  await expect(teeth).toHaveValue('25')
  await expect(axes).toHaveValue('shift')
  await page.getByRole('button', { name: /^Undo/ }).click()
  await expect(teeth).toHaveValue('20')
  await expect(axes).toHaveValue('distance')
})
