import { expect, test } from '@playwright/test'
import { goTo, open, watch } from './support/app.ts'

const WAYS = ['Demonstrate', 'Predict', 'Measure', 'Design'] as const

test('every way opens without a complaint, a request to elsewhere or a refusal by the policy', async ({
  page,
}) => {
  const seen = await watch(page)
  await open(page)
  for (const way of WAYS) await goTo(page, way)
  const home = new URL(page.url()).origin
  const elsewhere = seen.requests.filter((url) => !/^(data|blob):/.test(url) && new URL(url).origin !== home)
  expect(seen.requests.length).toBeGreaterThan(1)
  expect(elsewhere).toEqual([])
  expect(seen.refusals).toEqual([])
  expect(seen.complaints).toEqual([])
})

test('the policy refuses inline script and eval', async ({ page }) => {
  const seen = await watch(page)
  await open(page)
  await page.evaluate(() => {
    const script = document.createElement('script')
    script.textContent = 'window.inlineScriptRan = true'
    document.head.append(script)
    Reflect.apply(setTimeout, window, ['window.evalRan = true', 0])
  })
  await expect.poll(() => seen.refusals.join('\n')).toMatch(/script-src.* inline[^]*script-src.* eval/)
  const ran = await page.evaluate(() =>
    ['inlineScriptRan', 'evalRan'].filter((name) => Reflect.has(window, name)),
  )
  expect(ran).toEqual([])
})
