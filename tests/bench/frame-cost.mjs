/** Main-thread time for each frame of a page that runs by itself, the same way for every page. */

/** Small, so that drawing by the processor leaves the main thread room and many frames are counted. */
const VIEWPORT = { width: 1200, height: 640 }
const PATIENCE = 90_000
const WARM_UP = 6000
const STRETCH = 4000
const FEWEST_FRAMES = 5

/** Runs in the page before its own scripts: adds up the time spent in animation-frame callbacks. */
function watchFrames() {
  const frames = { count: 0, time: 0 }
  const ask = window.requestAnimationFrame.bind(window)
  let last = -1
  window.requestAnimationFrame = (callback) =>
    ask((now) => {
      const started = performance.now()
      callback(now)
      frames.time += performance.now() - started
      if (now !== last) frames.count += 1
      last = now
    })
  window.benchFrames = frames
}

async function snapshot(page, session) {
  const { metrics } = await session.send('Performance.getMetrics')
  const value = (name) => metrics.find((metric) => metric.name === name).value * 1000
  const frames = await page.evaluate(() => ({ ...window.benchFrames, at: performance.now() }))
  return { ...frames, task: value('TaskDuration'), script: value('ScriptDuration') }
}

async function measure(page, session) {
  const before = await snapshot(page, session)
  await page.waitForTimeout(STRETCH)
  const after = await snapshot(page, session)
  const frames = after.count - before.count
  if (frames < FEWEST_FRAMES) throw new Error(`only ${frames} frames in ${STRETCH / 1000} s: it does not run`)
  const perFrame = (key) => (after[key] - before[key]) / frames
  return {
    callbacks: perFrame('time'),
    script: perFrame('script'),
    task: perFrame('task'),
    rate: (frames * 1000) / (after.at - before.at),
  }
}

/** What the bare scene must match: the picture's size, its smoothing, its triangles and draw calls. */
const describePicture = (page) =>
  page.evaluate(() => {
    const drawn = [...document.querySelectorAll('canvas')]
      .map((canvas) => ({ canvas, context: canvas.getContext('webgl2') }))
      .filter(({ context }) => context !== null)
      .sort((a, b) => b.canvas.width * b.canvas.height - a.canvas.width * a.canvas.height)
    const { canvas, context } = drawn[0]
    const { triangles, drawCalls } = window.counterturn.renderInfo()
    const antialias = context.getContextAttributes()?.antialias ? 1 : 0
    return { width: canvas.width, height: canvas.height, antialias, triangles, drawCalls }
  })

/**
 * Opens a page by itself, sets it going, warms it up and measures one stretch: milliseconds a frame in callbacks,
 * in script and on the whole thread, frames a second, and what the picture was made of.
 */
export async function frameCost(browser, address, setGoing) {
  const context = await browser.newContext({ viewport: VIEWPORT, deviceScaleFactor: 1 })
  try {
    const page = await context.newPage()
    page.setDefaultTimeout(PATIENCE)
    await page.addInitScript(watchFrames)
    await page.goto(address)
    await page.waitForFunction(() => window.counterturn !== undefined, undefined, { polling: 100 })
    await page.evaluate(() => window.counterturn.ready)
    await setGoing(page)
    const session = await context.newCDPSession(page)
    await session.send('Performance.enable')
    await page.waitForTimeout(WARM_UP)
    const cost = await measure(page, session)
    return { ...cost, picture: await describePicture(page) }
  } finally {
    await context.close()
  }
}
