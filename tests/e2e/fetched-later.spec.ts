/** What is not in the first load: a person who is quicker than the network must not notice, nor lose anything. */
import { type Page, expect, test } from '@playwright/test'
import { open } from './support/app.ts'

const CHECKS = /\/check-[^/]*\.js$/

/** Lets nothing of this name through until the answer is called. */
async function holdBack(page: Page, name: RegExp): Promise<() => void> {
  let release = () => {}
  const gate = new Promise<void>((resolve) => (release = resolve))
  await page.route(name, async (route) => {
    await gate
    await route.continue()
  })
  return release
}

const fields = (page: Page) => ({
  teeth: page.getByLabel('Wheel teeth', { exact: true }),
  starts: page.getByLabel('Worm starts', { exact: true }),
  ratio: page.getByRole('status', { name: 'Ratio', exact: true }),
  undo: page.getByRole('button', { name: 'Undo', exact: true }),
})

test('edits made before the checks are here wait for them, in order, and each is one step of undo', async ({
  page,
}) => {
  const release = await holdBack(page, CHECKS)
  await open(page)
  const { teeth, starts, ratio, undo } = fields(page)
  await teeth.click()
  await teeth.fill('30')
  await teeth.fill('31')
  await starts.fill('2')
  await expect(teeth).toHaveValue('31')
  const more = page.getByRole('button', { name: 'One tooth more', exact: true })
  await more.click()
  await more.click()
  await expect(teeth).toHaveValue('33')
  await expect(starts).toHaveValue('2')
  await expect(ratio).toHaveText('20 : 1')
  release()
  await expect(ratio).toHaveText('16.50 : 1')
  await expect(teeth).toHaveValue('33')
  for (const [values, text] of [
    [['2', '32'], '16 : 1'],
    [['2', '31'], '15.50 : 1'],
    [['1', '31'], '31 : 1'],
    [['1', '20'], '20 : 1'],
  ] as const) {
    await undo.click()
    await expect(ratio).toHaveText(text)
    await expect(starts).toHaveValue(values[0])
    await expect(teeth).toHaveValue(values[1])
  }
  await expect(undo).toBeDisabled()
})

test('a number that the checks refuse when they come is explained under its field', async ({ page }) => {
  const release = await holdBack(page, CHECKS)
  await open(page)
  await page.evaluate(() =>
    window.counterturn.edit((machine) => ({
      ...machine,
      gearing: { ...machine.gearing, centres: { kind: 'distance', centreDistance: 30 } },
    })),
  )
  const { teeth, ratio } = fields(page)
  await teeth.fill('22')
  await teeth.fill('28')
  await expect(teeth).toHaveAttribute('aria-invalid', 'false')
  release()
  await expect(ratio).toHaveText('22 : 1')
  await expect(page.getByText(/must be from 36 to 40 mm/)).toBeVisible()
  await expect(teeth).toHaveValue('28')
  await expect(teeth).toHaveAttribute('aria-invalid', 'true')
  await teeth.blur()
  await expect(teeth).toHaveValue('22')
  await expect(teeth).toHaveAttribute('aria-invalid', 'false')
})

test('without a network a number is not taken unchecked, and the next try fetches again', async ({
  page,
}) => {
  await page.route(CHECKS, (route) => route.abort())
  await open(page)
  const { teeth, ratio } = fields(page)
  await teeth.fill('30')
  await expect(page.getByText(/cannot be checked/)).toBeVisible()
  await expect(ratio).toHaveText('20 : 1')
  await page.unroute(CHECKS)
  await teeth.fill('31')
  await expect(ratio).toHaveText('31 : 1')
})

test('the machine sheet opens when it has come, and hands the focus back', async ({ page }) => {
  const release = await holdBack(page, /\/MachineSheet-[^/]*\.js$/)
  await open(page)
  const button = page.getByRole('button', { name: /^Machine/ })
  const sheet = page.getByRole('dialog', { name: 'Machine', exact: true })
  await button.focus()
  await page.keyboard.press('Enter')
  await expect(sheet).toHaveCount(0)
  release()
  await expect(sheet).toBeVisible()
  await expect(sheet.getByRole('button', { name: 'Close', exact: true })).toBeFocused()
  await page.keyboard.press('Escape')
  await expect(sheet).toBeHidden()
  await expect(button).toBeFocused()
})

test('a link put into the address is opened over what is there, and Undo takes it back', async ({ page }) => {
  await open(page)
  const { teeth, ratio, undo } = fields(page)
  await teeth.fill('37')
  await teeth.blur()
  await expect(ratio).toHaveText('37 : 1')
  // a page that is left writes what it has not kept yet, plainly until what packs it has come
  const leave = () =>
    page.evaluate(() => {
      dispatchEvent(new Event('pagehide'))
      return localStorage.getItem('counterturn.bench') ?? ''
    })
  await expect.poll(leave).toMatch(/^[\w-]+$/)
  const link = await leave()
  await teeth.fill('24')
  await expect(ratio).toHaveText('24 : 1')
  await page.evaluate((text) => {
    location.hash = `#/demonstrate?s=${text}`
  }, link)
  await expect(ratio).toHaveText('37 : 1')
  await expect(page).toHaveURL(/#\/demonstrate$/)
  await undo.click()
  await expect(ratio).toHaveText('24 : 1')
})

test('without a network at the opening nothing is opened, and nothing that was kept is lost', async ({
  page,
}) => {
  await open(page)
  await fields(page).teeth.fill('37')
  await expect(fields(page).ratio).toHaveText('37 : 1')
  const reader = /\/open-text-[^/]*\.js$/
  await page.route(reader, (route) => route.abort())
  await page.reload()
  await expect(page.getByText('Reload it to try again')).toBeVisible()
  await page.unroute(reader)
  await open(page)
  await expect(fields(page).ratio).toHaveText('37 : 1')
})
