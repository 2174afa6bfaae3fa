/** Files under the machine's name, handed to the browser's own saving. */
import type { Machine } from '../../sim/machine/machine.ts'
import { fileName } from '../file/open-save.ts'

/** Some browsers read the address only after the click has been dealt with [ms]. */
const KEPT_FOR = 10_000

const TYPES = {
  stl: 'model/stl',
  '3mf': 'model/3mf',
  glb: 'model/gltf-binary',
  svg: 'image/svg+xml',
} as const
export type Ending = keyof typeof TYPES

/** 'Boot cleaner' and 'worm-mm' to 'boot-cleaner-worm-mm.stl': the unit is in the name. */
export const modelFileName = (machine: Machine, what: string, ending: Ending): string =>
  `${fileName(machine).replace(/\.json$/, '')}-${what}.${ending}`

export function saveFile(name: string, ending: Ending, content: BlobPart): void {
  const url = URL.createObjectURL(new Blob([content], { type: TYPES[ending] }))
  const anchor = document.createElement('a')
  anchor.href = url
  anchor.download = name
  anchor.click()
  setTimeout(() => URL.revokeObjectURL(url), KEPT_FOR)
}
