/** `npm run pictures`: takes the README's picture of the built program anew. */
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { chromium } from '@playwright/test'
import { BROWSER_FLAGS, findBrowser } from './browser.mjs'
import { ROOT } from './project.mjs'
import { buildSite, serveSite, siteIsFresh } from './site.mjs'

const FOLDER = join(ROOT, 'assets/pictures')

/** Electrical parts come after the first picture: all are there once nothing is fetched and the cost of a picture stays. */
async function whole(page) {
  await page.waitForLoadState('networkidle')
  const cost = () =>
    page.evaluate(() => {
      window.counterturn.draw()
      return JSON.stringify(window.counterturn.renderInfo())
    })
  let [before, now] = ['', await cost()]
  while (now !== before) {
    await new Promise((next) => setTimeout(next, 1000))
    before = now
    now = await cost()
  }
}

if (!siteIsFresh()) await buildSite()
const site = await serveSite({ port: 0 })
const browser = await chromium.launch({ executablePath: await findBrowser(), args: BROWSER_FLAGS })
const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
page.setDefaultTimeout(120_000)
await page.goto(`${site.addresses[0]}?quality=high`)
await page.waitForFunction(() => window.counterturn)
await page.evaluate(() => window.counterturn.ready)
await whole(page)
await page.getByLabel('Setting', { exact: true }).fill('3')
await page.evaluate(() => {
  document.activeElement?.blur()
  window.counterturn.placeAt(24, 90)
})
await page.keyboard.press('Space')
await page.evaluate(() => {
  window.counterturn.advance(0.05)
  window.counterturn.draw()
})
mkdirSync(FOLDER, { recursive: true })
await page.screenshot({ path: join(FOLDER, 'demonstrate.png') })
await browser.close()
await site.close()
