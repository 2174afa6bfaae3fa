import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { buildFrames, collections } from '../../support/frames-process.ts'

const folder = mkdtempSync(join(tmpdir(), 'wave-'))
beforeAll(() => buildFrames('tests/support/wave-frames.ts', folder))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

test.each(['boot-cleaner', 'cord-winder'])(
  'more than 100 000 steps of the %s moment by moment leave no garbage to collect',
  (machine) => {
    expect(collections(folder, machine, 'running')).toBe(0)
  },
)

test('the count would notice one array for each tenth of a second', () => {
  expect(collections(folder, 'boot-cleaner', 'wasteful')).toBeGreaterThan(1)
})
