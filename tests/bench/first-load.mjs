/** Weight and time of a first visit, each with an empty cache. */
import { gzipSync } from 'node:zlib'

const VIEWPORT = { width: 1440, height: 900 }
const PATIENCE = 90_000

/** Runs in the page: notes when the first picture, once ready, has had two animation frames to reach the screen. */
function noteFirstPicture() {
  const reachScreen = () => {
    window.benchReadyAt = performance.now()
    requestAnimationFrame(() =>
      requestAnimationFrame(() => {
        window.benchPictureAt = performance.now()
      }),
    )
  }
  const timer = setInterval(() => {
    if (!window.counterturn) return
    clearInterval(timer)
    window.counterturn.ready.then(reachScreen, () => undefined)
  }, 4)
}

async function openFresh(browser) {
  const context = await browser.newContext({ viewport: VIEWPORT, deviceScaleFactor: 1 })
  const page = await context.newPage()
  page.setDefaultTimeout(PATIENCE)
  await page.addInitScript(noteFirstPicture)
  return page
}

async function firstPicture(page, address) {
  await page.goto(address)
  await page.waitForFunction(() => window.benchPictureAt !== undefined, undefined, { polling: 50 })
  return page.evaluate(() => window.benchPictureAt)
}

export async function pictureTime(browser, address) {
  const page = await openFresh(browser)
  try {
    return await firstPicture(page, address)
  } finally {
    await page.context().close()
  }
}

/** Bytes over the wire as a server that compresses would send them. */
const weigh = (body) => Math.min(body.length, gzipSync(body, { level: 9 }).length)

/** Files fetched before the first picture, and those after it, heaviest first. */
export async function pageWeight(browser, address) {
  const page = await openFresh(browser)
  try {
    const bodies = new Map()
    page.on('response', (response) => {
      const url = response.url()
      if (!url.startsWith('data:') && !url.startsWith('blob:')) bodies.set(url, response.body())
    })
    await firstPicture(page, address)
    await page.waitForTimeout(3000)
    const early = await page.evaluate(() =>
      performance
        .getEntriesByType('resource')
        .filter((entry) => entry.startTime < window.benchReadyAt)
        .map((entry) => entry.name),
    )
    const first = new Set([page.url().split('#')[0], ...early])
    const files = await Promise.all(
      [...bodies].map(async ([url, body]) => ({
        name: new URL(url).pathname,
        bytes: weigh(await body),
        early: first.has(url),
      })),
    )
    return files.sort((a, b) => b.bytes - a.bytes)
  } finally {
    await page.context().close()
  }
}
