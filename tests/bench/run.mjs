/**
 * `npm run bench`: measures and prints, and asserts nothing. Ratios come first, because they say something on any
 * machine. Page and bare page take turns, so that whatever else the machine does falls on both. A part that cannot
 * be measured is named with its reason, and the others go on.
 */
import { chromium } from '@playwright/test'
import { BROWSER_FLAGS, findBrowser } from '../support/browser.mjs'
import { pageWeight, pictureTime } from './first-load.mjs'
import { frameCost } from './frame-cost.mjs'
import { figuresOf } from './own-process.mjs'
import { loadCore, removeFolder, serveOwnSite, servePeers, temporaryFolder } from './pages.mjs'
import { rebuildTimes } from './rebuild.mjs'
import { driveRows } from './drive-figures.mjs'
import { shapeRows } from './shape-figures.mjs'

const RUNS = Number(process.env.BENCH_RUNS ?? 5)
const rows = []
const notes = []

function median(values) {
  const sorted = [...values].sort((a, b) => a - b)
  return (sorted[(sorted.length - 1) >> 1] + sorted[sorted.length >> 1]) / 2
}

const spread = (values, digits) =>
  `${Math.min(...values).toFixed(digits)} to ${Math.max(...values).toFixed(digits)}`
const row = (what, value, goal = '', met) => rows.push({ what, value, goal, met })

async function part(what, measure) {
  try {
    console.error(`measuring: ${what}`)
    await measure()
  } catch (error) {
    row(what, `not measured: ${String(error.message).split('\n')[0]}`)
    process.exitCode = 1
  }
}

async function pressTurn(page) {
  const turn = page.getByRole('button', { name: 'Turn', exact: true })
  if (!(await turn.isVisible())) await page.getByRole('link', { name: 'Demonstrate', exact: true }).click()
  await turn.click()
}

function compareFrames(what, key, goal, own, bare) {
  const mine = own.map((cost) => cost[key])
  const theirs = bare.map((cost) => cost[key])
  const ratio = median(mine) / median(theirs)
  row(what, `${ratio.toFixed(2)} x`, goal ? `at most ${goal} x` : '', goal ? ratio <= goal : undefined)
  notes.push(
    `${what}: ${median(mine).toFixed(2)} ms (${spread(mine, 2)}) against ${median(theirs).toFixed(2)} ms (${spread(theirs, 2)})`,
  )
}

async function frames(browser, site, peers) {
  const own = []
  const bare = []
  for (let run = 0; run < RUNS; run++) {
    const cost = await frameCost(browser, site.address, pressTurn)
    own.push(cost)
    const like = new URLSearchParams(cost.picture)
    bare.push(await frameCost(browser, `${peers.address}three.html?${like}`, async () => undefined))
  }
  const { width, height, antialias, triangles, drawCalls } = own[RUNS - 1].picture
  compareFrames('frame work of the running stage', 'callbacks', 1.25, own, bare)
  compareFrames('script time a frame', 'script', undefined, own, bare)
  compareFrames('whole main thread a frame', 'task', undefined, own, bare)
  const rate = (costs) => median(costs.map((cost) => cost.rate)).toFixed(1)
  notes.push(
    `picture: ${triangles} triangles in ${drawCalls} draw calls, ${width} x ${height}, smoothing ${antialias ? 'on' : 'off'}; ${rate(own)} frames a second against ${rate(bare)}`,
  )
}

async function firstPictures(browser, site, peers) {
  const own = []
  const bare = []
  for (let run = 0; run <= RUNS; run++) {
    own.push(await pictureTime(browser, site.address))
    bare.push(await pictureTime(browser, `${peers.address}fiber.html`))
  }
  const [mine, theirs] = [own.slice(1), bare.slice(1)]
  const ratio = median(mine) / median(theirs)
  row('time to the first picture', `${ratio.toFixed(2)} x`, 'at most 1.50 x', ratio <= 1.5)
  notes.push(
    `time to the first picture: ${median(mine).toFixed(0)} ms (${spread(mine, 0)}) against ${median(theirs).toFixed(0)} ms (${spread(theirs, 0)})`,
  )
}

async function weight(browser, site) {
  const files = await pageWeight(browser, site.address)
  const kilobytes = (chosen) => chosen.reduce((sum, file) => sum + file.bytes, 0) / 1000
  const early = files.filter((file) => file.early)
  const total = kilobytes(early)
  row('fetched before the first picture', `${total.toFixed(0)} kB`, 'at most 420 kB', total <= 420)
  row('fetched in the 3 s after it', `${kilobytes(files.filter((file) => !file.early)).toFixed(0)} kB`)
  for (const file of early.slice(0, 6))
    notes.push(`  ${(file.bytes / 1000).toFixed(1).padStart(7)} kB  ${file.name}`)
}

async function core(folder) {
  const { coreTimes } = await loadCore(folder)
  const times = coreTimes(RUNS, 200_000)
  row('step, reading and poses', `${median(times).toFixed(2)} us`)
  notes.push(`step, reading and poses: ${spread(times, 2)} us`)
}

async function drags(browser, site) {
  const { times, main } = await rebuildTimes(browser, site.address)
  const most = [...times].sort((a, b) => a - b)[Math.floor(0.95 * times.length)]
  row('picture follows a drag, 95 of 100', `${most.toFixed(1)} ms`, 'at most 16 ms', most <= 16)
  notes.push(
    `picture follows a drag: median ${median(times).toFixed(1)} ms (${spread(times, 1)}), main thread ${median(main).toFixed(1)} ms with drawing`,
  )
}

async function figures(name, rowsOf) {
  const { rows: more, notes: said } = rowsOf(await figuresOf(name))
  for (const { what, value, goal, met } of more) row(what, value, goal, met)
  notes.push(...said)
}

function print() {
  const wide = (key) => Math.max(...rows.map((entry) => entry[key].length))
  const [whats, values, goals] = [wide('what'), wide('value'), wide('goal')]
  console.log('')
  for (const { what, value, goal, met } of rows) {
    const verdict = met === undefined ? '' : met ? 'met' : 'NOT met'
    console.log(
      `${what.padEnd(whats)}  ${value.padStart(values)}  ${goal.padEnd(goals)}  ${verdict}`.trimEnd(),
    )
  }
  console.log(`\nMedian of ${RUNS} (least to most), sizes as gzip -9, software rendering:`)
  for (const note of notes) console.log(`  ${note}`)
}

const folders = [temporaryFolder(), temporaryFolder()]
const peers = await servePeers(folders[0])
const browser = await chromium.launch({ executablePath: await findBrowser(), args: BROWSER_FLAGS })
let site
try {
  await part('our own page', async () => {
    site = await serveOwnSite()
  })
  if (site) {
    await part('frame work of the running stage', () => frames(browser, site, peers))
    await part('time to the first picture', () => firstPictures(browser, site, peers))
    await part('fetched before the first picture', () => weight(browser, site))
    await part('picture follows a drag', () => drags(browser, site))
  }
  await part('step, reading and poses', () => core(folders[1]))
  await part('the drive', () => figures('drive', driveRows))
  await part('worm and wheel', () => figures('shapes', shapeRows))
  print()
} finally {
  await browser.close()
  await Promise.all([peers.close(), site?.close()])
  folders.forEach(removeFolder)
}
