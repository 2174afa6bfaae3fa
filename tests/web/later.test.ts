/** What is fetched when it is first wanted must also be fetched by itself, or it is missing once the network is gone. */
import { readFileSync, readdirSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { expect, test } from 'vitest'

const LATE_IMPORT = /\bimport\('(\.[^']+)'\)/g

/** Fetched while the page opens: the stage, and what reads the link that it came with. */
const FETCHED_AT_FIRST = ['web/scene/Stage.tsx']

const lateImports = (file: string): string[] =>
  [...readFileSync(file, 'utf8').matchAll(LATE_IMPORT)].map(([, to]) => normalize(join(dirname(file), to!)))

const sources = readdirSync('web', { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.tsx?$/.test(name))
  .map((name) => join('web', name))

test('every part that comes later is also fetched while the page rests', () => {
  const known = new Set([
    ...lateImports('web/later.ts'),
    ...lateImports('web/demonstrate/judge.ts'),
    ...FETCHED_AT_FIRST,
  ])
  const wanted = sources.flatMap((file) => lateImports(file).map((to) => `${file} wants ${to}`))
  expect(wanted.length).toBeGreaterThan(known.size)
  expect(wanted.filter((each) => !known.has(each.split(' wants ')[1]!))).toEqual([])
})
