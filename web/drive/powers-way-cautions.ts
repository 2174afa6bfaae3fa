/** What can hurt at a stop on the power's way. Local rules and licensed people have the last word. */
import type { Machine } from '../../sim/machine/machine.ts'
import type { PowerStop } from '../store/view.ts'

const MAINS =
  'Mains voltage can kill. Pull the plug before a case is opened; work on mains parts is for licensed people, by local rules.'
const PRIMARY =
  'Mains voltage on the side of the socket while the plug is in. The core grows hot in long running.'
const LIVE =
  'Not separated from the mains: live while the plug is in, whatever the setting. Pull the plug first.'
const BATTERY = 'A short circuit of a battery burns. Take its lead off before tools come near.'
const CHARGED =
  'Stays charged after the plug is out. Wait for the bleed resistor, then measure, before anybody touches it.'
const HOT_SINK = 'The heat sink can be hot to the touch.'
const CARBON = 'Hot, and worn to conducting dust. Unplug, let it cool, and do not blow the dust about.'
const HOT = 'The winding can be far hotter than the case. Unplug and let it cool before touching.'
const BLADES = 'Blades that turn too fast to be seen still cut. Unplug and wait for standstill.'
const MESH = 'The mesh draws in fingers, hair and sleeves. Unplug, and turn it by hand to see it work.'
const OUTPUTS = 'Slow but strong: a geared output does not stop for a finger. Unplug before clearing it.'
const BY_HAND = 'The mesh draws in fingers also by hand. One person turns, and nobody else touches.'

/** Whether no transformer keeps the mains away from the motor. */
const isLive = ({ supply, transformer }: Machine): boolean => supply.kind === 'mains' && transformer === null

/** As far as the commutator, where the current goes. */
function electrical(machine: Machine): Partial<Record<PowerStop, string>> {
  const { supply } = machine
  const live = isLive(machine)
  const sources = { mains: { socket: MAINS }, battery: { socket: BATTERY }, crank: {} } as const
  return {
    ...sources[supply.kind],
    transformer: PRIMARY,
    capacitor: CHARGED,
    rectifier: live ? LIVE : HOT_SINK,
    ...(live && { setting: LIVE }),
    brushes: live ? LIVE : CARBON,
    commutator: live ? LIVE : CARBON,
  }
}

function mechanical({ motor }: Machine): Partial<Record<PowerStop, string>> {
  if (motor === null) return { worm: BY_HAND, wheels: BY_HAND, outputs: BY_HAND }
  return { armature: HOT, fan: BLADES, worm: MESH, wheels: MESH, outputs: OUTPUTS }
}

export const caution = (machine: Machine, stop: PowerStop): string | null =>
  electrical(machine)[stop] ?? mechanical(machine)[stop] ?? null
