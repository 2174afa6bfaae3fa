import { existsSync, readFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

/** Words that switch a tool off: looked for in every source file but this one, which has to spell them. */
const SILENCERS = [
  'lint-disable',
  '@ts-ignore',
  '@ts-expect-error',
  '@ts-nocheck',
  'prettier-ignore',
  'oxfmt-ignore',
]
const SOURCES = ['sim', 'web', 'tests']

function sourceFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|tsx|mjs|mts)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
}

test('no source file silences a tool', () => {
  const files = SOURCES.flatMap(sourceFiles).filter((file) => !file.endsWith('upkeep.test.ts'))
  expect(files.length).toBeGreaterThan(10)
  expect(files.filter((file) => SILENCERS.some((word) => readFileSync(file, 'utf8').includes(word)))).toEqual(
    [],
  )
})

test('the lock file holds no download address', () => {
  const lock: unknown = JSON.parse(readFileSync('package-lock.json', 'utf8'))
  const addresses: unknown[] = []
  JSON.stringify(lock, (key, value: unknown) => {
    if (key === 'resolved') addresses.push(value)
    return value
  })
  expect(lock).toMatchObject({ name: 'counterturn' })
  expect(addresses).toEqual([])
})

test.each(['README.md', 'DEVELOPERS.md', 'CHANGELOG.md'])('every link of %s leads to a file', (name) => {
  const links = [...readFileSync(name, 'utf8').matchAll(/\]\((?!https?:)([^)#]+)\)/g)].map(([, to]) => to!)
  expect(links.filter((to) => !existsSync(to))).toEqual([])
})
