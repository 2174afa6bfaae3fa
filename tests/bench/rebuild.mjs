/** How long the picture takes to follow a parameter that is dragged, with the other thread's answer included. */

/** Small, so that drawing by the processor leaves the two threads that are measured room. */
const VIEWPORT = { width: 480, height: 360 }
const PATIENCE = 120_000
const DRAGS = 100
const WARM_UP = 12
const SEED = 20_261

/** Runs in the page: one edit, and the milliseconds until the bodies of the new machine are in the scene. */
function drag({ name, value }) {
  return new Promise((settle) => {
    const began = performance.now()
    new PerformanceObserver((list, observer) => {
      for (const { name: measure, startTime, duration } of list.getEntries()) {
        if (measure !== 'rebuild') continue
        observer.disconnect()
        settle(startTime + duration - began)
      }
    }).observe({ type: 'measure' })
    window.counterturn.edit((machine) => ({ ...machine, gearing: { ...machine.gearing, [name]: value } }))
  })
}

/** Runs in the page: settles when all that was drawn is on the screen and nothing is left to do. */
async function settled() {
  await new Promise((next) => requestAnimationFrame(() => requestAnimationFrame(next)))
  const canvas = document.querySelector('canvas[role=application]')
  const gl = canvas.getContext('webgl2')
  gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, new Uint8Array(4))
  await new Promise((next) => setTimeout(next, 20))
}

/** Even, repeatable numbers from 0 to 1: Park and Miller's minimal standard generator. */
function evenNumbers(seed) {
  let state = seed
  return () => {
    state = (state * 16807) % 2147483647
    return state / 2147483647
  }
}

/** A hand on three controls in turn: stretches of small steps, each a value that the control can have. */
function dragSequence(count) {
  const next = evenNumbers(SEED)
  const controls = [
    { name: 'wheelTeeth', from: 18, to: 60, step: 1 },
    { name: 'axialModule', from: 1.5, to: 3, step: 0.05 },
    { name: 'pressureAngle', from: 16, to: 24, step: 0.5 },
  ]
  const place = [0.1, 0.33, 0.5]
  return Array.from({ length: count }, (_, i) => {
    const at = Math.floor(i / 10) % controls.length
    const { name, from, to, step } = controls[at]
    const before = place[at]
    place[at] = Math.min(1, Math.max(0, before + (next() - 0.45) * 0.2))
    if (Math.abs(place[at] - before) * (to - from) < step)
      place[at] = before + (before > 0.5 ? -1.5 : 1.5) * (step / (to - from))
    return { name, value: from + step * Math.round((place[at] * (to - from)) / step) }
  })
}

const taskTime = async (session) => {
  const { metrics } = await session.send('Performance.getMetrics')
  return metrics.find(({ name }) => name === 'TaskDuration').value * 1000
}

/**
 * Drags at full detail, one after the other: milliseconds from each edit to the new bodies in the scene, and the
 * main thread's part of it until the picture is drawn.
 */
export async function rebuildTimes(browser, address) {
  const context = await browser.newContext({ viewport: VIEWPORT, deviceScaleFactor: 1 })
  try {
    const page = await context.newPage()
    page.setDefaultTimeout(PATIENCE)
    await page.goto(`${address}?quality=medium#/demonstrate`)
    await page.waitForFunction(() => window.counterturn !== undefined, undefined, { polling: 100 })
    await page.evaluate(() => window.counterturn.ready)
    const session = await context.newCDPSession(page)
    await session.send('Performance.enable')
    const times = []
    const main = []
    for (const [i, change] of dragSequence(WARM_UP + DRAGS).entries()) {
      await page.evaluate(settled)
      const before = await taskTime(session)
      const took = await page.evaluate(drag, change)
      const busy = (await taskTime(session)) - before
      if (i < WARM_UP) continue
      times.push(took)
      main.push(busy)
    }
    return { times, main }
  } finally {
    await context.close()
  }
}
