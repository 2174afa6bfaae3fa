/** A figure that comes in a chunk of its own must bring the style of what it draws along. */
import { readFileSync, readdirSync } from 'node:fs'
import { expect, test } from 'vitest'

const root = new URL('../../web/', import.meta.url)
const files = readdirSync(root, { recursive: true, encoding: 'utf8' })
const components = files.filter((file) => file.endsWith('.tsx'))
const text = (file: string): string => readFileSync(new URL(file, root), 'utf8')

const OF_CHARTS = /['"` ](plot-[a-z]|chart-actions)/
const charts = components.filter((file) => OF_CHARTS.test(text(file)))

test('there are components that draw charts', () => {
  expect(charts.length).toBeGreaterThan(5)
})

test.each(charts)('%s imports the style of charts', (file) => {
  expect(text(file)).toMatch(/^import '(\.\.\/chart|\.)\/chart\.css'$/m)
})
