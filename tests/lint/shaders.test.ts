import { readFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

/**
 * Materials whose shaders the build keeps, or that bring their own; `leaveOutShaders` in vite.config.ts takes the
 * others out.
 */
const KEPT = new Set([
  'LineMaterial',
  'MeshBasicMaterial',
  'MeshStandardMaterial',
  'ShaderMaterial',
  'ShadowMaterial',
])
const MATERIAL = /\b(?:(?:Mesh|Line|Raw)\w*|Points|Sprite|Shader|Shadow)Material\b/g
/** What a kept material would need a part for that is taken out. */
const LEFT_OUT = /\benvMap\b|\.environment\b|\btransmission\b|\bclearcoat\b|\biridescence\b/

const sources = readdirSync('web', { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
  .map((entry) => readFileSync(join(entry.parentPath, entry.name), 'utf8'))

test('no material is used whose shader the build leaves out', () => {
  const used = new Set(sources.flatMap((text) => text.match(MATERIAL) ?? []))
  expect(used).toContain('MeshStandardMaterial')
  expect([...used].filter((name) => !KEPT.has(name))).toEqual([])
  expect(sources.filter((text) => LEFT_OUT.test(text))).toEqual([])
})
