/** The rules on who may import whom are worth something only if they fail on a wrong import: each is planted here. */
import { spawnSync } from 'node:child_process'
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, expect, test } from 'vitest'

const IMPORTS = 'eslint(no-restricted-imports)'
const GLOBALS = 'eslint(no-restricted-globals)'
const PROPERTIES = 'eslint(no-restricted-properties)'

const root = process.cwd()
const oxlint = join(root, 'node_modules/.bin/oxlint')
const gardens: string[] = []

afterAll(() => {
  for (const garden of gardens) rmSync(garden, { recursive: true, force: true })
})

function plant(files: Readonly<Record<string, string>>): string {
  const garden = mkdtempSync(join(tmpdir(), 'counterturn-lint-'))
  gardens.push(garden)
  mkdirSync(join(garden, 'tests/lint'), { recursive: true })
  for (const name of ['.oxlintrc.json', 'tsconfig.json', 'tests/lint/frame-rules.mjs']) {
    copyFileSync(join(root, name), join(garden, name))
  }
  symlinkSync(join(root, 'node_modules'), join(garden, 'node_modules'))
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(garden, path)), { recursive: true })
    writeFileSync(join(garden, path), text)
  }
  return garden
}

interface Diagnostic {
  readonly code: string
  readonly filename: string
}

/** What the linter finds, as `file rule`, each once. */
function findings(files: Readonly<Record<string, string>>): { status: number | null; found: string[] } {
  const { status, stdout } = spawnSync(oxlint, ['--type-aware', '--deny-warnings', '--format=json'], {
    cwd: plant(files),
    encoding: 'utf8',
  })
  const { diagnostics } = JSON.parse(stdout) as { diagnostics: readonly Diagnostic[] }
  return {
    status,
    found: [...new Set(diagnostics.map(({ code, filename }) => `${filename} ${code}`))].sort(),
  }
}

const importing = (source: string): string =>
  `import { thing } from '${source}'\n\nexport const other = thing\n`
const importingType = (source: string): string =>
  `import type { Thing } from '${source}'\n\nexport const other = (thing: Thing): Thing => thing\n`
const importingLate = (source: string): string => `export const other = () => import('${source}')\n`
const passingOn = (source: string): string => `export { thing } from '${source}'\n`

const wrongImports: readonly (readonly [file: string, source: string])[] = [
  ['sim/quantity/planted.ts', 'three'],
  ['sim/quantity/planted.ts', '../gear/worm.ts'],
  ['sim/electric/planted.ts', '../gear/worm.ts'],
  ['sim/electric/planted.ts', '../machine/machine.ts'],
  ['sim/electric/planted.ts', '../quantity/quantity.ts'],
  ['sim/numeric/planted.ts', '../quantity/constants.ts'],
  ['sim/heat/planted.ts', '../electric/motor.ts'],
  ['sim/heat/planted.ts', '../machine/machine.ts'],
  ['sim/measuring/planted.ts', '../machine/machine.ts'],
  ['sim/measuring/planted.ts', '../electric/motor.ts'],
  ['sim/run/planted.ts', '../pose/pose.ts'],
  ['sim/run/planted.ts', '../shape/wheel-rim.ts'],
  ['sim/drive/planted.ts', '../run/heating.ts'],
  ['web/chart/planted.ts', '../store/view.ts'],
  ['web/chart/planted.ts', '../instrument/reading-text.ts'],
  ['web/instrument/planted.ts', '../drive/HeatPanel.tsx'],
  ['web/scene/planted.ts', '../drive/HeatPanel.tsx'],
  ['web/run-work/planted.ts', '../frame/frame.ts'],
  ['web/run-work/planted.ts', '../store/bench.ts'],
  ['web/drive/planted.ts', '../scene/Scene.tsx'],
  ['web/drive/planted.ts', '../gears/gears.css'],
  ['web/drive/planted.ts', '../design/Design.tsx'],
  ['web/drive/planted.ts', 'three'],
  ['web/panel/planted.ts', '../drive/HeatPanel.tsx'],
  ['web/panel/planted.ts', '../gears/ContactPanel.tsx'],
  ['sim/gear/planted.ts', '../electric/motor.ts'],
  ['sim/gear/planted.ts', '../machine/machine.ts'],
  ['sim/gear/planted.ts', 'mathjs'],
  ['sim/machine/planted.ts', '../drive/drive.ts'],
  ['sim/machine/planted.ts', '../shape/wheel-rim.ts'],
  ['sim/machine/planted.ts', '../../assets/machines/boot-cleaner.json'],
  ['sim/shape/planted.ts', '../drive/drive.ts'],
  ['sim/shape/planted.ts', '../pose/pose.ts'],
  ['sim/shape/planted.ts', 'three'],
  ['sim/drive/planted.ts', '../pose/pose.ts'],
  ['sim/drive/planted.ts', '../shape/wheel-rim.ts'],
  ['sim/drive/planted.ts', 'mathjs/number'],
  ['sim/drive/planted.ts', 'zustand/vanilla'],
  ['sim/pose/planted.ts', '../run/heating.ts'],
  ['sim/pose/planted.ts', '../../web/frame/frame.ts'],
  ['sim/pose/planted.ts', '../../tests/support/near.ts'],
  ['sim/pose/planted.ts', 'react'],
  ['sim/pose/planted.ts', 'node:fs'],
  ['sim/question/planted.ts', '../pose/pose.ts'],
  ['sim/question/planted.ts', '../run/heating.ts'],
  ['sim/question/planted.ts', '../quantity/entry.ts'],
  ['sim/question/families/planted.ts', '../../shape/wheel-rim.ts'],
  ['sim/question/families/planted.ts', '../../quantity/quantity.ts'],
  ['sim/drive/planted.ts', '../question/marking.ts'],
  ['sim/pose/planted.ts', '../question/marking.ts'],
  ['sim/machine/planted.ts', '../question/bank.ts'],
  ['web/question/planted.ts', '../lesson/play.ts'],
  ['web/question/planted.ts', '../predict/PredictionSheet.tsx'],
  ['web/record/planted.ts', '../lesson/play.ts'],
  ['web/lesson/planted.ts', '../predict/PredictionSheet.tsx'],
  ['web/lesson/planted.ts', '../scene/Scene.tsx'],
  ['web/worksheet/planted.ts', '../record/xapi.ts'],
  ['web/presenter/planted.ts', '../scene/Scene.tsx'],
  ['web/channel/planted.ts', '../predict/PredictionSheet.tsx'],
  ['web/instrument/planted.ts', '../question/Compared.tsx'],
  ['web/scene/planted.ts', '../lesson/play.ts'],
  ['web/store/planted.ts', '../frame/frame.ts'],
  ['web/store/planted.ts', '../scene/views.ts'],
  ['web/store/planted.ts', 'three'],
  ['web/frame/planted.ts', '../scene/views.ts'],
  ['web/frame/planted.ts', '../instrument/Readings.tsx'],
  ['web/material/planted.ts', '../store/document.ts'],
  ['web/material/planted.ts', '../../sim/gear/worm.ts'],
  ['web/material/planted.ts', 'react'],
  ['web/scene/planted.ts', '../instrument/Readings.tsx'],
  ['web/scene/planted.ts', '../predict/Predict.tsx'],
  ['web/instrument/planted.ts', '../scene/Scene.tsx'],
  ['web/instrument/planted.ts', '../design/Design.tsx'],
  ['web/instrument/planted.ts', 'three'],
  ['web/file/planted.ts', '../scene/Scene.tsx'],
  ['web/file/planted.ts', '../design/Design.tsx'],
  ['web/instrument/planted.ts', '../file/open-save.ts'],
  ['web/scene/planted.ts', '../timing/put-in.ts'],
  ['web/instrument/planted.ts', '../panel/panels.ts'],
  ['web/gears/planted.ts', '../scene/Scene.tsx'],
  ['web/gears/planted.ts', '../drive/HeatPanel.tsx'],
  ['web/gears/planted.ts', 'three'],
  ['web/timing/planted.ts', '../design/Design.tsx'],
  ['web/timing/planted.ts', '../gears/touching.ts'],
  ['web/models/planted.ts', '../timing/put-in.ts'],
  ['web/models/planted.ts', '../demonstrate/Demonstrate.tsx'],
  ['web/demonstrate/planted.ts', '../predict/Predict.tsx'],
  ['web/predict/planted.ts', '../measure/Measure.tsx'],
  ['web/measure/planted.ts', '../design/Design.tsx'],
  ['web/design/planted.ts', '../App.tsx'],
  ['web/design/planted.ts', 'mathjs'],
  ['web/planted.ts', '../tests/support/near.ts'],
]

const otherForms: readonly (readonly [form: string, text: string])[] = [
  ['a type', importingType('../drive/drive.ts')],
  ['a late import', importingLate('../drive/drive.ts')],
  ['a name passed on', passingOn('../drive/drive.ts')],
]

const wrongGlobals = [
  'document.title',
  'performance.now()',
  'Date.now()',
  'new Date()',
  'globalThis.name',
  'self.name',
]

/** All plants in one garden, each in a file of its own, so that the linter has to run only once. */
const plants: Record<string, string> = {
  'sim/drive/lots.ts': 'export const other = Math.random()\n',
  'sim/gear/first.ts':
    "import type { Second } from './second.ts'\n\nexport interface First {\n  readonly second: Second\n}\n",
  'sim/gear/second.ts':
    "import type { First } from './first.ts'\n\nexport interface Second {\n  readonly first: First\n}\n",
  'web/store/promise.ts':
    'const later = async (): Promise<number> => 1\n\nexport function now(): void {\n  later()\n}\n',
  'web/scene/fresh.ts':
    "import { useFrame } from '@react-three/fiber'\n\nexport const useFresh = (): void => useFrame((state) => state.camera.lookAt(state.camera.position.clone()))\n",
  'web/store/anything.ts': 'export const other = (given: any): unknown => given\n',
}
const plantedImport = (index: number, file: string): string => file.replace('planted', `planted-${index}`)
for (const [index, [file, source]] of wrongImports.entries())
  plants[plantedImport(index, file)] = importing(source)
for (const [index, [, text]] of otherForms.entries()) plants[`sim/machine/form-${index}.ts`] = text
for (const [index, text] of wrongGlobals.entries()) {
  plants[`sim/pose/global-${index}.ts`] = `export const other = (): unknown => ${text}\n`
}

const { status, found } = findings(plants)
const rulesBrokenBy = (file: string): string[] =>
  found.filter((finding) => finding.startsWith(`${file} `)).map((finding) => finding.slice(file.length + 1))

test('planted mistakes fail the run', () => expect(status).toBe(1))

test.each(wrongImports.map(([file, source], index) => ({ file, source, index })))(
  '$file may not import $source',
  ({ file, index }) => expect(rulesBrokenBy(plantedImport(index, file))).toEqual([IMPORTS]),
)

test.each(otherForms.map(([form], index) => ({ form, index })))(
  '$form is an import like any other',
  ({ index }) => expect(rulesBrokenBy(`sim/machine/form-${index}.ts`)).toEqual([IMPORTS]),
)

test.each(wrongGlobals.map((text, index) => ({ text, index })))('sim may not use $text', ({ index }) =>
  expect(rulesBrokenBy(`sim/pose/global-${index}.ts`)).toEqual([GLOBALS]),
)

test.each([
  ['sim/drive/lots.ts', PROPERTIES],
  ['sim/gear/first.ts', 'import(no-cycle)'],
  ['sim/gear/second.ts', 'import(no-cycle)'],
  ['web/store/promise.ts', 'typescript(no-floating-promises)'],
  ['web/scene/fresh.ts', 'counterturn(no-garbage-in-frame)'],
  ['web/store/anything.ts', 'typescript(no-explicit-any)'],
])('%s breaks %s', (file, rule) => expect(rulesBrokenBy(file)).toEqual([rule]))

test('files that keep to the directions pass', () => {
  const thing = 'export const thing = 1\n'
  const clean = findings({
    'sim/quantity/constants.ts': thing,
    'sim/gear/worm.ts': importing('../quantity/constants.ts'),
    'sim/electric/motor.ts': importing('../quantity/constants.ts'),
    'sim/machine/machine.ts': importing('../quantity/constants.ts'),
    'sim/machine/check.ts': importing('./thing.ts'),
    'sim/machine/thing.ts': thing,
    'sim/drive/drive.ts': importing('../machine/thing.ts'),
    'sim/shape/wheel-rim.ts': importing('../machine/thing.ts'),
    'sim/pose/pose.ts': importing('../machine/thing.ts'),
    'web/store/document.ts': importing('../../sim/machine/thing.ts'),
    'web/frame/frame.ts': importing('../../sim/machine/thing.ts'),
    'web/scene/views.ts': importing('../../sim/quantity/constants.ts'),
    'web/instrument/words.ts': importing('../../sim/quantity/constants.ts'),
    'web/predict/words.ts': importing('../../sim/quantity/constants.ts'),
    'web/App.ts': importing('../sim/quantity/constants.ts'),
    'tests/web/planted.ts': importing('../../sim/quantity/constants.ts'),
  })
  expect(clean).toEqual({ status: 0, found: [] })
})
