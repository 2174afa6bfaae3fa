/** The first version of the link, whose machines had no tooth depth, no backlash and no rows of bristles yet. */
import type { Machine } from '../../sim/machine/machine.ts'

const GEARING = [
  'profile',
  'hand',
  'wormStarts',
  'wheelTeeth',
  'axialModule',
  'diameterQuotient',
  'pressureAngle',
  'friction',
  'wheelWidth',
] as const
const OUTPUTS = ['wheelInertia', 'bearingTorque', 'tufts', 'loads'] as const

const picked = <T extends object>(whole: T, keys: readonly (keyof T)[]): object =>
  Object.fromEntries(keys.map((key) => [key, whole[key]]))

/** What that version knew of a machine, in the order in which it wrote it. */
export const firstMachine = (machine: Machine): object => ({
  ...machine,
  version: 1,
  gearing: picked(machine.gearing, GEARING),
  outputs: picked(machine.outputs, OUTPUTS),
})
