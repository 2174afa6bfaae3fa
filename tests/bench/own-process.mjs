/** Runs a part of the bench in a process of its own that can be told to collect its garbage. */
import { execFile } from 'node:child_process'
import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { build } from 'vite'
import { cacheFolder, ROOT } from '../support/project.mjs'

const run = promisify(execFile)

/** What tests/bench/`name`.ts prints. Built inside the project, where the packages that it compares with are found. */
export async function figuresOf(name) {
  const outDir = join(cacheFolder(), `bench-${name}`)
  try {
    await build({
      root: ROOT,
      configFile: false,
      logLevel: 'warn',
      build: { outDir, ssr: join(ROOT, `tests/bench/${name}.ts`), emptyOutDir: true, target: 'node20' },
    })
    const { stdout } = await run(process.execPath, ['--expose-gc', join(outDir, `${name}.js`)])
    return JSON.parse(stdout)
  } finally {
    rmSync(outDir, { recursive: true, force: true })
  }
}
