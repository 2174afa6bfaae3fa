/** Every part in the tone of its temperature, with the numbers beside winding and case. */
import { Group, type Material, Mesh, type Object3D, Vector3 } from 'three'
import type { Layout } from '../../../sim/pose/layout.ts'
import { PART_NAMES } from '../../../sim/pose/parts.ts'
import type { SubstanceMaterials } from '../../material/materials.ts'
import type { PartHeat } from '../../store/part-heat.ts'
import type { MovingParts } from '../moving-parts.ts'
import { isClose } from '../camera-rig.ts'
import type { Sign } from '../sign.ts'
import { type HeatPaint, heatKind } from './heat-paint.ts'
import { type Label, createLabels } from './labels.ts'

const KINDS = PART_NAMES.map(heatKind)
const ROTOR = PART_NAMES.indexOf('rotor')
const MOTOR = PART_NAMES.indexOf('motor')

/** What a part had on, to be given back */
type Worn = Map<Mesh, Material>

interface Tinting {
  readonly paint: HeatPaint
  readonly own: readonly Material[]
  /** Of the part that is spoken of */
  readonly selected: Material
  readonly worn: Worn
}

/** Puts the tone on every solid below; React may have put the part's own material back since the last time. */
function tint(object: Object3D, kind: (typeof KINDS)[number], tinting: Tinting): void {
  const { paint, own, selected, worn } = tinting
  if (object instanceof Mesh && own.includes(object.material)) {
    const tones = object.material === selected ? paint.chosen : paint.materials
    worn.set(object, object.material)
    object.material = tones[kind]
  }
  for (let i = 0; i < object.children.length; i++) tint(object.children[i]!, kind, tinting)
}

function tintAll({ groups }: MovingParts, tinting: Tinting): void {
  for (let i = 0; i < groups.length; i++) {
    const group = groups[i]
    if (group) tint(group, KINDS[i]!, tinting)
  }
}

const degrees = (T: number): string => `${Math.round(T)} °C`.replace('-', '−')

type Told = Pick<PartHeat, 'winding' | 'case'>
type Point = readonly [number, number, number]

/** A text beside a part, in the part's own frame [mm] */
interface Place {
  readonly part: number
  readonly text: string
  readonly at: Point
  readonly from: Point
}

function placesOf({ motor }: Layout, { winding, case: body }: Told): readonly Place[] {
  if (!motor) return []
  const from: Point = [0, 0, (motor.armatureFront + motor.armatureBack) / 2]
  return [
    { part: ROTOR, text: `Winding ${degrees(winding)}`, at: [0, motor.radius, from[2]], from },
    { part: MOTOR, text: `Case ${degrees(body)}`, at: [motor.radius, 0, from[2]], from },
  ]
}

const labelAt = ({ text, at, from }: Place): Label => ({
  text,
  at: new Vector3(...at),
  from: new Vector3(...from),
  minor: false,
})

export function heatSign(
  layout: Layout,
  heat: Told,
  materials: SubstanceMaterials,
  paint: HeatPaint,
  canvas: HTMLCanvasElement,
): Sign {
  const places = placesOf(layout, heat)
  const labels = places.map(labelAt)
  const tags = createLabels(canvas, labels)
  const worn: Worn = new Map()
  const tinting: Tinting = {
    paint,
    // Where the light on the power's way stands it is seen for itself.
    own: [materials.plain, materials.selected, materials.plainBristle],
    selected: materials.selected,
    worn,
  }
  return {
    object: new Group(),
    paint({ parts, rig, caseState }) {
      tintAll(parts, tinting)
      // The stripe is left out with the mark, where the worm is too fast for both.
      paint.setStripe(parts.marks.worm?.visible ?? false)
      for (let i = 0; i < places.length; i++) {
        const { part, at, from } = places[i]!
        const moved = parts.groups[part]?.position
        if (!moved) continue
        labels[i]!.at.fromArray(at).add(moved)
        labels[i]!.from.fromArray(from).add(moved)
      }
      tags.place(rig, caseState !== 'closed', !isClose(rig))
    },
    dispose() {
      for (const [mesh, own] of worn) mesh.material = own
      tags.dispose()
    },
  }
}
