import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { buildFrames, collections } from '../../support/frames-process.ts'

const folder = mkdtempSync(join(tmpdir(), 'contact-'))
beforeAll(() => buildFrames('tests/support/contact-frames.ts', folder))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

test.each(['boot-cleaner', 'vent-opener'])(
  'contact lines of the %s leave no garbage to collect over 300 000 frames',
  (machine) => {
    expect(collections(folder, machine, 'running')).toBe(0)
  },
)

test('the count would notice one small object a frame', () => {
  expect(collections(folder, 'boot-cleaner', 'wasteful')).toBeGreaterThan(1)
})
