import { type Page, expect, test } from '@playwright/test'
import { advance, open } from './support/app.ts'

/** Draws one frame and gives its pixels, of the canvas alone. */
const stagePixels = (page: Page): Promise<string> =>
  page.evaluate(() => {
    window.counterturn.draw()
    return document.querySelector<HTMLCanvasElement>('.stage canvas')!.toDataURL()
  })

/** The electrical parts come after the first picture; with them it takes more draw calls. */
async function wholeMachine(page: Page): Promise<void> {
  const calls = () =>
    page.evaluate(() => {
      window.counterturn.draw()
      return window.counterturn.renderInfo().drawCalls
    })
  const bodies = () =>
    page.evaluate(() =>
      performance.getEntriesByType('resource').some(({ name }) => /\/electric-bodies-[^/]*\.js$/.test(name)),
    )
  await expect.poll(bodies).toBe(true)
  let before = 0
  const growth = async () => {
    const last = before
    before = await calls()
    return before - last
  }
  await expect.poll(growth, { intervals: [1500] }).toBe(0)
}

test('the picture is the same at the same place, and another at another', async ({ page }) => {
  await open(page, '?quality=medium')
  await wholeMachine(page)
  await page.evaluate(() => window.counterturn.placeAt(0, 90))
  const turned = await stagePixels(page)
  await page.evaluate(() => window.counterturn.placeAt(0, 45))
  expect(await stagePixels(page)).not.toBe(turned)
  await page.evaluate(() => window.counterturn.placeAt(0, 90))
  expect(await stagePixels(page)).toBe(turned)
})

test('without WebGL a drawn view turns with the same counts', async ({ page }) => {
  await page.addInitScript(() => {
    const real: unknown = Reflect.get(HTMLCanvasElement.prototype, 'getContext')
    const refuse = function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
      return kind.startsWith('webgl') ? null : Reflect.apply(real as () => unknown, this, [kind, ...rest])
    }
    Object.defineProperty(HTMLCanvasElement.prototype, 'getContext', { value: refuse })
  })
  await open(page, '')
  await expect(page.getByText('This device shows no 3D picture', { exact: false })).toBeVisible()
  const before = await page.locator('.stage svg').first().innerHTML()
  await page.keyboard.press('3')
  await advance(page, 1)
  await expect(page.getByRole('status', { name: 'Worm turns', exact: true })).toHaveText('0.25 turns')
  expect(await page.locator('.stage svg').first().innerHTML()).not.toBe(before)
})
