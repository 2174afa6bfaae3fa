/** The pages that are measured: our own site and the bare ones beside it, each built and served alike. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { build, preview } from 'vite'
import { ROOT } from '../support/project.mjs'
import { buildSite } from '../support/site.mjs'

/** These make the clock of the page fine enough: 5 microseconds instead of 100. */
const HEADERS = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
}

const PEER = join(ROOT, 'tests/bench/peer')

export const temporaryFolder = () => mkdtempSync(join(tmpdir(), 'counterturn-bench-'))
export const removeFolder = (folder) => rmSync(folder, { recursive: true, force: true })

async function serve(root, outDir) {
  const server = await preview({
    root,
    configFile: false,
    logLevel: 'warn',
    build: { outDir },
    preview: { port: 0, host: '127.0.0.1', headers: HEADERS },
  })
  return { address: server.resolvedUrls.local[0], close: () => server.close() }
}

export async function serveOwnSite() {
  await buildSite()
  return serve(join(ROOT, 'web'), join(ROOT, 'dist'))
}

export async function servePeers(outDir) {
  await build({
    root: PEER,
    configFile: false,
    logLevel: 'warn',
    build: {
      outDir,
      emptyOutDir: true,
      target: 'es2022',
      chunkSizeWarningLimit: 2000,
      rolldownOptions: { input: [join(PEER, 'three.html'), join(PEER, 'fiber.html')] },
    },
  })
  return serve(PEER, outDir)
}

/** The model by itself, bundled as for the page, to run in Node. */
export async function loadCore(outDir) {
  await build({
    root: ROOT,
    configFile: false,
    logLevel: 'warn',
    build: { outDir, ssr: join(ROOT, 'tests/bench/core.ts'), emptyOutDir: true, target: 'es2022' },
  })
  return import(pathToFileURL(join(outDir, 'core.js')).href)
}
