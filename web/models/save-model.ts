/** Files under the machine's name, handed to the browser's own saving. */
import type { Machine } from '../../sim/machine/machine.ts'
import { fileName } from '../file/open-save.ts'
import { saveFile } from '../file/save-file.ts'

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

export const saveModel = (name: string, ending: Ending, content: BlobPart): void =>
  saveFile(name, TYPES[ending], content)
