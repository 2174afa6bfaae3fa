import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { buildFrames, collections } from '../../support/frames-process.ts'

const folder = mkdtempSync(join(tmpdir(), 'frames-'))
beforeAll(() => buildFrames('tests/support/million-frames.ts', folder))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

test.each([
  ['boot-cleaner', 'running'],
  ['boot-cleaner', 'locked'],
  ['boot-cleaner', 'smoothed'],
  ['vent-opener', 'running'],
  ['cord-winder', 'running'],
  ['classroom-model', 'running'],
])('a million steps, readings and poses of the %s, %s, leave no garbage to collect', (machine, manner) => {
  expect(collections(folder, machine, manner)).toBe(0)
})

test('the count would notice one small object a frame', () => {
  expect(collections(folder, 'classroom-model', 'wasteful')).toBeGreaterThan(5)
})
