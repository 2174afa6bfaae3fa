/** Shared steps of the browser tests. `window.counterturn` is declared where the page makes it: web/exact.ts. */
import { type Page, expect } from '@playwright/test'

/** What went on while a page was open, for tests that want silence. */
export interface Watch {
  /** Console errors, warnings and exceptions. */
  readonly complaints: string[]
  readonly requests: string[]
  /** Things that the page's own policy refused. */
  readonly refusals: string[]
}

/** Three warns of its own deprecated clock, which @react-three/fiber 9 still makes. */
const KNOWN_WARNINGS = [/THREE\.Clock: .*deprecated/i]

/** Chromium's own remarks on drawing by software, which no page can help. */
const DRIVER_REMARKS = [/GPU stall due to ReadPixels/, /software WebGL/i, /SwiftShader/i]

const silent = (text: string): boolean =>
  [...KNOWN_WARNINGS, ...DRIVER_REMARKS].some((known) => known.test(text))

/** Listens from before the first byte; call it before `open`. */
export async function watch(page: Page): Promise<Watch> {
  const seen: Watch = { complaints: [], requests: [], refusals: [] }
  page.on('console', (message) => {
    const serious = message.type() === 'error' || message.type() === 'warning'
    if (serious && !silent(message.text())) seen.complaints.push(message.text())
  })
  page.on('pageerror', (error) => seen.complaints.push(error.message))
  page.on('request', (request) => seen.requests.push(request.url()))
  await page.exposeFunction('reportRefusal', (text: string) => seen.refusals.push(text))
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      const report: unknown = Reflect.get(window, 'reportRefusal')
      if (typeof report === 'function')
        report(`${event.violatedDirective}: ${event.blockedURI} ${event.sample}`)
    })
  })
  return seen
}

/**
 * Opens a page of the site and waits for its first picture. `path` may carry a query or a fragment; without one the
 * picture is drawn plainly, which no test but those of the picture itself can tell.
 */
export async function open(page: Page, path = '?quality=low'): Promise<void> {
  await page.goto(`./${path}`)
  await page.waitForFunction(() => Reflect.has(window, 'counterturn'))
  await page.evaluate(() => window.counterturn.ready)
}

export const advance = (page: Page, modelSeconds: number): Promise<void> =>
  page.evaluate((seconds) => window.counterturn.advance(seconds), modelSeconds)

export const draw = (page: Page): Promise<void> => page.evaluate(() => window.counterturn.draw())

/** Waits until nothing more is fetched, so that what a way loads when it is opened is there. */
async function settle(page: Page): Promise<void> {
  await page.waitForFunction(
    () => {
      const fetched = performance.getEntriesByType('resource')
      return (
        performance.now() - Math.max(0, ...fetched.map((entry) => entry.startTime + entry.duration)) > 500
      )
    },
    undefined,
    { polling: 100 },
  )
}

export async function goTo(page: Page, way: string): Promise<void> {
  await page.getByRole('link', { name: way, exact: true }).click()
  await page.waitForTimeout(100)
  await settle(page)
}

const GEARS = ['Contact', 'Forces', 'Timing', 'Models']

/** Opens a panel by its tab, in the group that it belongs to. */
export async function openPanel(page: Page, name: string): Promise<void> {
  const group = GEARS.includes(name) ? 'Gears' : 'Drive'
  await page.getByRole('group', { name: 'Panels about' }).getByRole('button', { name: group }).click()
  await page.getByRole('tab', { name }).click()
  await expect(page.getByRole('tabpanel', { name }).getByText('Loading')).toHaveCount(0)
}
