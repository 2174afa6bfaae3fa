import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import { expect, test } from 'vitest'

const LOOP = fileURLToPath(new URL('../../support/million-frames.ts', import.meta.url))

/** Garbage collections over a million frames of each machine in a process of its own, after warming up. */
async function collections(): Promise<Record<string, number>> {
  const folder = mkdtempSync(join(tmpdir(), 'frames-'))
  try {
    await build({
      configFile: false,
      logLevel: 'silent',
      build: { ssr: LOOP, outDir: folder, target: 'node20', rolldownOptions: { output: { entryFileNames: 'frames.mjs' } } },
    })
    const text = execFileSync(process.execPath, ['--expose-gc', join(folder, 'frames.mjs')], { encoding: 'utf8' })
    return JSON.parse(text) as Record<string, number>
  } finally {
    rmSync(folder, { recursive: true })
  }
}

test('a million steps and readings leave no garbage to collect', async () => {
  expect(await collections()).toEqual({
    'boot-cleaner running': 0,
    'boot-cleaner locked': 0,
    'vent-opener running': 0,
    'classroom-model running': 0,
    'one object a frame': expect.any(Number),
  })
}, 120_000)

test('the count would notice one object a frame', async () => {
  expect((await collections())['one object a frame']).toBeGreaterThan(0)
}, 120_000)
