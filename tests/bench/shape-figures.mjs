/** How worm and wheel are shaped, measured in a process of its own that can be told to collect its garbage. */
import { execFile } from 'node:child_process'
import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { build } from 'vite'
import { cacheFolder, ROOT } from '../support/project.mjs'

const run = promisify(execFile)

/** Built inside the project, where the solid kernel that it is compared with is found. */
export async function shapeFigures() {
  const outDir = join(cacheFolder(), 'bench-shapes')
  try {
    await build({
      root: ROOT,
      configFile: false,
      logLevel: 'warn',
      build: { outDir, ssr: join(ROOT, 'tests/bench/shapes.ts'), emptyOutDir: true, target: 'node20' },
    })
    const { stdout } = await run(process.execPath, ['--expose-gc', join(outDir, 'shapes.js')])
    return JSON.parse(stdout)
  } finally {
    rmSync(outDir, { recursive: true, force: true })
  }
}
