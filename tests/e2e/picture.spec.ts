import { expect, test } from '@playwright/test'
import { advance, draw, open } from './support/app.ts'

const stagePixels = (page: import('@playwright/test').Page) =>
  page.locator('.stage canvas').screenshot({ animations: 'disabled' })

test('the picture is the same at the same place, and another at another', async ({ page }) => {
  await open(page, '?quality=medium')
  await draw(page)
  const atZero = await stagePixels(page)
  await page.getByRole('button', { name: 'A quarter turn', exact: true }).isHidden()
  await page.keyboard.press('3')
  await advance(page, 1)
  await draw(page)
  const turned = await stagePixels(page)
  expect(turned.equals(atZero)).toBe(false)
  await page.keyboard.press('0')
  await draw(page)
  // The pointers swell for a moment when their marks land, so the picture is asked for until they are at rest.
  const backAtZero = async () => {
    await draw(page)
    return (await stagePixels(page)).equals(atZero)
  }
  await expect.poll(backAtZero, { timeout: 60_000 }).toBe(true)
})

test('without WebGL a drawn view turns with the same counts', async ({ page }) => {
  await page.addInitScript(() => {
    const real: unknown = Reflect.get(HTMLCanvasElement.prototype, 'getContext')
    const refuse = function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
      return kind.startsWith('webgl') ? null : Reflect.apply(real as () => unknown, this, [kind, ...rest])
    }
    Object.defineProperty(HTMLCanvasElement.prototype, 'getContext', { value: refuse })
  })
  await open(page)
  await expect(page.getByText('This device shows no 3D picture', { exact: false })).toBeVisible()
  const before = await page.locator('.stage svg').first().innerHTML()
  await page.keyboard.press('3')
  await advance(page, 1)
  await expect(page.getByRole('status', { name: 'Worm turns', exact: true })).toHaveText('0.25 turns')
  expect(await page.locator('.stage svg').first().innerHTML()).not.toBe(before)
})
