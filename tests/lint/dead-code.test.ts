import { spawnSync } from 'node:child_process'
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { expect, test } from 'vitest'

const root = process.cwd()

const FILES: Readonly<Record<string, string>> = {
  'web/main.tsx':
    "import { used } from '../sim/gear/worm.ts'\nimport { shown } from './shown.ts'\n\nshown(used)\n",
  'web/shown.ts': 'export const shown = (text: string) => text\nexport const neverShown = 1\n',
  'sim/gear/worm.ts': "export const used = 'used'\nexport const neverUsed = 1\n",
  'sim/gear/forgotten.ts': 'export const forgotten = 1\n',
}

interface Issues {
  readonly file: string
  readonly exports: readonly { readonly name: string }[]
  readonly files: readonly unknown[]
}

function deadCode(): { status: number | null; exports: string[]; files: string[] } {
  const garden = mkdtempSync(join(tmpdir(), 'counterturn-knip-'))
  for (const name of ['knip.json', 'package.json', 'tsconfig.json'])
    copyFileSync(join(root, name), join(garden, name))
  symlinkSync(join(root, 'node_modules'), join(garden, 'node_modules'))
  for (const [path, text] of Object.entries(FILES)) {
    mkdirSync(dirname(join(garden, path)), { recursive: true })
    writeFileSync(join(garden, path), text)
  }
  const { status, stdout } = spawnSync(
    join(root, 'node_modules/.bin/knip'),
    ['--include=files,exports', '--reporter=json', '--no-config-hints'],
    { cwd: garden, encoding: 'utf8' },
  )
  rmSync(garden, { recursive: true, force: true })
  const { issues } = JSON.parse(stdout) as { issues: readonly Issues[] }
  return {
    status,
    exports: issues.flatMap(({ file, exports }) => exports.map(({ name }) => `${file} ${name}`)).sort(),
    files: issues.filter(({ files }) => files.length > 0).map(({ file }) => file),
  }
}

test('an export that nothing imports and a file that nothing reaches are found', () => {
  expect(deadCode()).toEqual({
    status: 1,
    exports: ['sim/gear/worm.ts neverUsed', 'web/shown.ts neverShown'],
    files: ['sim/gear/forgotten.ts'],
  })
})
