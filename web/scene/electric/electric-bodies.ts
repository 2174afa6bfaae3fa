/** The solids of the electrical parts; fetched after the first picture, which does without them. */
import type { BufferGeometry } from 'three'
import type { Machine } from '../../../sim/machine/machine.ts'
import type { Stand } from '../../../sim/pose/electric-layout.ts'
import type { Layout } from '../../../sim/pose/layout.ts'
import type { PartName } from '../../../sim/pose/parts.ts'
import type { Detail } from '../detail.ts'
import { type Piece, part, placed } from '../solid.ts'
import { type Lead, leadPieces, lightedLead, plugPieces, socketBody } from './lead-parts.ts'
import { type Knob, knobOf, settingPieces } from './setting-parts.ts'
import { batteryPieces, capacitorPieces, rectifierPieces, transformerPieces } from './supply-parts.ts'

/** What the current passes, and the socket, which stands off while the plug is out. */
export interface ElectricBodies {
  readonly solids: ReadonlyMap<PartName, BufferGeometry>
  readonly socket: BufferGeometry | null
  /** How far off along z the socket stands while the plug is out [mm] */
  readonly unplugged: number
  /** Of the speed setting, about its own axis with its line towards the viewer; null without one */
  readonly knob: Knob | null
  /** The leads as the current passes them, up to each stop */
  readonly leads: readonly Lead[]
}

export function electricBodies(machine: Machine, layout: Layout, detail: Detail): ElectricBodies {
  const solids = new Map<PartName, BufferGeometry>()
  const { electric } = layout
  if (electric === null) return { solids, socket: null, unplugged: 0, knob: null, leads: [] }
  const { stands, battery, plug, top } = electric
  const add = (name: PartName, stand: Stand | null | undefined, make: (stand: Stand) => Piece[]) => {
    if (stand) solids.set(name, placed(part(make(stand)), { x: stand.x, y: top, z: stand.z }))
  }
  add('battery', battery, (stand) => batteryPieces(stand, detail))
  add('transformer', stands.transformer, (stand) => transformerPieces(stand, detail))
  add('rectifier', stands.rectifier, rectifierPieces)
  add('capacitor', stands.capacitor, (stand) => capacitorPieces(stand, detail))
  add('setting', stands.setting, (stand) => settingPieces(stand, machine.control))
  const leads = leadPieces(electric, detail, false)
  if (plug) solids.set('plug', part([...plugPieces(plug, detail), ...leadPieces(electric, detail, true)]))
  else leads.push(...leadPieces(electric, detail, true))
  if (leads.length > 0) solids.set('leads', part(leads))
  return {
    solids,
    socket: plug && socketBody(plug),
    knob: stands.setting ? knobOf(stands.setting, top, machine.control) : null,
    unplugged: 1.1 * (plug?.length ?? 0),
    leads: electric.wires.map((wire) => lightedLead(wire, electric.wireRadius)),
  }
}

export function disposeElectric({ solids, socket, knob, leads }: ElectricBodies): void {
  for (const { light, ink } of leads) {
    light.dispose()
    ink.dispose()
  }
  for (const geometry of solids.values()) geometry.dispose()
  socket?.dispose()
  knob?.geometry.dispose()
}
