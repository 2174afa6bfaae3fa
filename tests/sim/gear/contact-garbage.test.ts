import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import { afterAll, beforeAll, expect, test } from 'vitest'

const file = (path: string): string => fileURLToPath(new URL(`../../../${path}`, import.meta.url))

let folder = ''
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'contact-'))
  await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      ssr: file('tests/support/contact-frames.ts'),
      outDir: folder,
      target: 'node20',
      rolldownOptions: { output: { entryFileNames: 'frames.mjs' } },
    },
  })
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** The compiler works in the loop's own thread, so a busy computer optimises the same frames. */
const FLAGS = ['--expose-gc', '--no-concurrent-recompilation', '--no-concurrent-sparkplug']

function collections(machine: string, manner: string): number {
  const given = [join(folder, 'frames.mjs'), file(`assets/machines/${machine}.json`), manner]
  return Number.parseInt(execFileSync(process.execPath, [...FLAGS, ...given], { encoding: 'utf8' }), 10)
}

test.each(['boot-cleaner', 'vent-opener'])(
  'contact lines of the %s leave no garbage to collect over 300 000 frames',
  (machine) => {
    expect(collections(machine, 'running')).toBe(0)
  },
)

test('the count would notice one small object a frame', () => {
  expect(collections('boot-cleaner', 'wasteful')).toBeGreaterThan(1)
})
