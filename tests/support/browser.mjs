/**
 * Finds a Chromium that really draws WebGL2, in this order: the one named by CHROMIUM_PATH, one that is installed,
 * Playwright's own, Playwright's download, and as root the Debian package. The answer is remembered until the
 * file changes. Run by itself it prints the path.
 */
import { chromium } from '@playwright/test'
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { ROOT, cacheFolder } from './project.mjs'

const MINUTE = 60_000
const COMMANDS = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome']
const APPLICATIONS = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
]

const asRoot = process.getuid?.() === 0

/** Software rendering always, so that a machine with a graphics card draws the same pictures. */
export const BROWSER_FLAGS = [
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  ...(asRoot ? ['--no-sandbox'] : []),
]

const say = (line) => console.error(line)

/** Starts the candidate and asks for WebGL2; gives the reason when it does not answer, else nothing. */
async function shortcoming(path) {
  let browser
  try {
    browser = await chromium.launch({ executablePath: path, args: BROWSER_FLAGS, timeout: MINUTE })
    const page = await browser.newPage()
    const drawn = await page.evaluate(() => document.createElement('canvas').getContext('webgl2') !== null)
    return drawn ? undefined : 'it starts but has no WebGL2'
  } catch (error) {
    return String(error.message).split('\n')[0]
  } finally {
    await browser?.close()
  }
}

async function firstWorking(paths) {
  for (const path of paths) {
    if (!existsSync(path)) continue
    const reason = await shortcoming(path)
    if (reason === undefined) return path
    say(`  ${path} is of no use: ${reason}`)
  }
  return undefined
}

function installedPaths() {
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '')
  return [...COMMANDS.flatMap((name) => folders.map((folder) => join(folder, name))), ...APPLICATIONS]
}

/** Runs a command that may take long or fail; its last words are shown only when it fails. */
function attempt(command, args) {
  say(`  trying: ${command} ${args.join(' ')}`)
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  const { status, stdout, stderr, error } = spawnSync(command, args, {
    cwd: ROOT,
    env,
    encoding: 'utf8',
    timeout: 10 * MINUTE,
    maxBuffer: 1 << 26,
  })
  if (status === 0) return true
  const last = `${stdout ?? ''}${stderr ?? ''}`.trim().split('\n').slice(-2).join(' / ')
  say(`  that did not work: ${error?.message ?? last}`)
  return false
}

const SOURCES = [
  () => installedPaths(),
  () => [chromium.executablePath()],
  () => (attempt('npx', ['playwright', 'install', 'chromium']) ? [chromium.executablePath()] : []),
  () => {
    if (!asRoot || !existsSync('/usr/bin/apt-get')) return []
    if (!attempt('apt-get', ['update'])) say('  going on with the package lists that are there')
    return attempt('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'])
      ? installedPaths()
      : []
  },
]

const stamp = (path) => `${statSync(path).mtimeMs}-${statSync(path).size}`
const memory = () => join(cacheFolder(), 'browser.json')

function remembered() {
  if (!existsSync(memory())) return undefined
  const { path, changed } = JSON.parse(readFileSync(memory(), 'utf8'))
  return existsSync(path) && stamp(path) === changed ? path : undefined
}

async function named(path) {
  if (!existsSync(path)) throw new Error(`CHROMIUM_PATH names ${path}, where there is no file`)
  const reason = await shortcoming(path)
  if (reason !== undefined) throw new Error(`CHROMIUM_PATH names ${path}, which is of no use: ${reason}`)
  return path
}

export async function findBrowser() {
  const wish = process.env.CHROMIUM_PATH ?? ''
  if (wish !== '') return named(wish)
  const known = remembered()
  if (known !== undefined) return known
  say('Looking for a Chromium that draws WebGL2 ...')
  for (const source of SOURCES) {
    const path = await firstWorking(source())
    if (path === undefined) continue
    say(`  found ${path}`)
    writeFileSync(memory(), JSON.stringify({ path, changed: stamp(path) }))
    return path
  }
  throw new Error(
    'No Chromium that draws WebGL2 was found. Install one (on Debian: apt-get install chromium),\n' +
      'or name one: CHROMIUM_PATH=/path/to/chromium npm test',
  )
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  try {
    console.log(await findBrowser())
  } catch (error) {
    console.error(error.message)
    process.exitCode = 1
  }
}
