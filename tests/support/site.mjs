/** The built site: made when it is missing or out of date, and served on a port that is free. */
import { existsSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { build, preview } from 'vite'
import { ROOT, newestChange } from './project.mjs'

const SOURCES = ['web', 'sim', 'assets', 'vite.config.ts', 'tsconfig.json', 'package-lock.json']
const VITE = { root: join(ROOT, 'web'), configFile: join(ROOT, 'vite.config.ts'), logLevel: 'warn' }

export function siteIsFresh() {
  const page = join(ROOT, 'dist/index.html')
  if (!existsSync(page)) return false
  const built = statSync(page).mtimeMs
  return SOURCES.every((source) => newestChange(join(ROOT, source)) <= built)
}

export const buildSite = () => build(VITE)

/** Port 0 takes any free port; any other moves on to the next free one when it is taken. */
export async function serveSite({ port, host }) {
  const server = await preview({ ...VITE, preview: { port, host, strictPort: false, open: false } })
  const { local, network } = server.resolvedUrls
  return { addresses: [...local, ...network], close: () => server.close() }
}
