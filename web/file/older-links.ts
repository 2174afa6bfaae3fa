/** Older versions of the link, whose machines were told less about than today's. */
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

function without<T extends object>(whole: T, ...keys: readonly (keyof T)[]): object {
  const left: Partial<T> = { ...whole }
  for (const key of keys) delete left[key]
  return left
}

/** What version 2 knew of a machine: nothing of capacitors, heat, brushes and protection. */
const secondMachine = (machine: Machine): object => ({
  ...without(machine, 'thermal', 'brushes', 'protection'),
  version: 2,
  rectifier: machine.rectifier && picked(machine.rectifier, ['diodeDrop']),
  rotor: without(machine.rotor, 'breakaway'),
  outputs: without(machine.outputs, 'jamTorque'),
})

/** What version 1 knew besides: no tooth depth, no backlash and no rows of bristles. */
const firstMachine = (machine: Machine): object => ({
  ...secondMachine(machine),
  version: 1,
  gearing: picked(machine.gearing, GEARING),
  outputs: picked(machine.outputs, OUTPUTS),
})

/** What a version of the link knew of a machine, in the order in which it wrote it. */
export function machineOfVersion(machine: Machine, version: number): object {
  if (version === 1) return firstMachine(machine)
  return version === 2 ? secondMachine(machine) : machine
}
