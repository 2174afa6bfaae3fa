/** The commutator seen close: turned by hand, exact at rest, and sparks where the machine works hard. */
import { type Page, expect, test } from '@playwright/test'
import { advance, draw, open, openPanel } from './support/app.ts'

const place = (page: Page) => page.getByRole('status', { name: 'The bold coil' })
const slider = (page: Page) => page.getByRole('slider', { name: 'Turn the commutator by hand' })

test('a coil is brought under the brush bar by bar, degree by degree, and by dragging', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await open(page, '?quality=low')
  await openPanel(page, 'Brushes')
  await expect(place(page)).toHaveText(/is 30° before the right brush: \+0\.2\d+ A/)
  await page.getByRole('button', { name: 'One bar on' }).click()
  await expect(place(page)).toHaveText(/is under the middle of the right brush: 0 A/)
  await slider(page).focus()
  for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowRight')
  await expect(place(page)).toHaveText(/is 4° past the right brush: −0\.0\d+ A/)
  await expect(slider(page)).toHaveAttribute('aria-valuenow', '4')
  await page.keyboard.press('PageUp')
  await expect(place(page)).toHaveText(/is 30° past the right brush: −0\.2\d+ A/)
  await page.keyboard.press('PageDown')
  await page.keyboard.press('PageDown')
  await expect(place(page)).toHaveText(/is 30° before the right brush/)

  await slider(page).scrollIntoViewIfNeeded()
  const box = (await slider(page).boundingBox())!
  const middle = box.y + box.height / 2
  await page.mouse.move(box.x + box.width / 2, middle)
  await page.mouse.down()
  // Four and six tenths of a bar fill the width.
  await page.mouse.move(box.x + box.width / 2 + box.width / 4.6, middle, { steps: 3 })
  await page.mouse.up()
  await expect(place(page)).toHaveText(
    /under the middle of the right brush|is 1° (before|past) the right brush/,
  )
})

/** Draw calls of a picture, once they stay the same: parts come in as they are fetched. */
async function steadyCalls(page: Page): Promise<number> {
  let [last, same] = [-1, 0]
  await expect
    .poll(
      async () => {
        await draw(page)
        const { drawCalls } = await page.evaluate(() => window.counterturn.renderInfo())
        same = drawCalls === last ? same + 1 : 0
        last = drawCalls
        return same
      },
      { intervals: [400] },
    )
    .toBeGreaterThan(4)
  return last
}

test('pressed boots bring sparks to the stage, and a switch takes them away', async ({ page }) => {
  await open(page, '?quality=low')
  await openPanel(page, 'Brushes')
  await page.getByLabel('Setting', { exact: true }).fill('5')
  await page.getByRole('button', { name: 'Load and plug' }).click()
  for (const side of ['Left', 'Right'])
    await page.getByLabel(`${side} wheel carries`).selectOption({ index: 1 })
  await page.keyboard.press('Escape')
  await expect(page.getByRole('heading', { name: /^Grade 2/ })).toBeVisible()
  await page.getByRole('button', { name: /^Turn/ }).click()
  await advance(page, 2)
  const sparks = page.getByRole('switch', { name: 'Sparks on the stage' })
  await expect(sparks).toBeChecked()
  const lit = await steadyCalls(page)
  await sparks.press('Space')
  expect(await steadyCalls(page)).toBe(lit - 1)
  await sparks.press('Space')
  expect(await steadyCalls(page)).toBe(lit)
})
