/** One force as a solid arrow with a keyline, drawn over everything: forces act inside bodies. */
import { ConeGeometry, CylinderGeometry, Group, Mesh, MeshBasicMaterial, Vector3 } from 'three'
import type { ForceArrow } from '../../store/view.ts'
import { INK, WHITE } from '../../material/sign-colours.ts'

/** Thickness of a shaft and size of a head, in the unit that all arrows share. */
const SHAFT = 1
const HEAD = { radius: 2.5, length: 5.6 }
const KEYLINE = 0.42
const SIDES = 14

const GREY = '#8a96a0'

interface Paint {
  readonly fill: string
  readonly line: string
  /** In thicknesses of the others */
  readonly thick: number
}

/** What adds is full and its sum thick as well, what cancels is open, what a bearing answers is grey. */
const PAINT: Readonly<Record<ForceArrow['kind'], Paint>> = {
  adds: { fill: INK, line: WHITE, thick: 1 },
  sum: { fill: INK, line: WHITE, thick: 1.8 },
  cancels: { fill: WHITE, line: INK, thick: 1 },
  bearing: { fill: GREY, line: INK, thick: 1 },
}

export interface ArrowKit {
  /** From the tail along `vector`, `length` long [mm], to the head. */
  arrow(kind: ForceArrow['kind'], tail: Vector3, along: Vector3, length: number): Group
  dispose(): void
}

const UP = new Vector3(0, 1, 0)
/** Keylines first, so that none crosses a neighbour's paint. */
const LINE_ORDER = 20

type KindPaint = { readonly fill: MeshBasicMaterial; readonly edge: MeshBasicMaterial }

export interface ArrowPaint {
  readonly kinds: Readonly<Record<ForceArrow['kind'], KindPaint>>
  dispose(): void
}

export function arrowPaint(): ArrowPaint {
  const kinds = Object.fromEntries(
    Object.entries(PAINT).map(([kind, { fill, line: edge }]) => [
      kind,
      { fill: flat(fill), edge: flat(edge) },
    ]),
  ) as Record<ForceArrow['kind'], KindPaint>
  return {
    kinds,
    dispose() {
      for (const { fill, edge } of Object.values(kinds)) {
        fill.dispose()
        edge.dispose()
      }
    },
  }
}

/** `unit` - thickness of a shaft [mm] */
export function arrowKit(unit: number, { kinds }: ArrowPaint): ArrowKit {
  const line = KEYLINE * unit
  const headLength = HEAD.length * unit
  const shaft = new CylinderGeometry(1, 1, 1, SIDES).translate(0, 0.5, 0)
  const head = new ConeGeometry(HEAD.radius * unit, headLength, SIDES).translate(0, -headLength / 2, 0)
  const slope = headLength / (HEAD.radius * unit)
  // A keyline of even width round a cone is a cone that is moved outwards along its slope.
  const outer = HEAD.radius * unit + 1.5 * line
  const outerHead = new ConeGeometry(outer, outer * slope, SIDES).translate(0, -(outer * slope) / 2, 0)
  const geometries = [shaft, head, outerHead]
  const mesh = (geometry: CylinderGeometry | ConeGeometry, material: MeshBasicMaterial, order: number) => {
    const made = new Mesh(geometry, material)
    made.renderOrder = order
    return made
  }
  return {
    arrow(kind, tail, along, length) {
      const { fill, edge } = kinds[kind]
      const group = new Group()
      const { thick } = PAINT[kind]
      const stem = length - thick * headLength
      const [inside, outside] = [mesh(shaft, fill, LINE_ORDER + 1), mesh(shaft, edge, LINE_ORDER)]
      inside.scale.set(thick * unit * SHAFT, stem, thick * unit * SHAFT)
      outside.scale.set(thick * unit * SHAFT + line, stem + line, thick * unit * SHAFT + line)
      outside.position.y = -line
      const [tip, rim] = [mesh(head, fill, LINE_ORDER + 1), mesh(outerHead, edge, LINE_ORDER)]
      tip.scale.setScalar(thick)
      rim.scale.setScalar(thick)
      tip.position.y = length
      rim.position.y = length + thick * (1.5 * slope - 0.9) * line
      group.add(outside, rim, inside, tip)
      group.position.copy(tail)
      group.quaternion.setFromUnitVectors(UP, along)
      return group
    },
    dispose() {
      for (const geometry of geometries) geometry.dispose()
    },
  }
}

const flat = (colour: string): MeshBasicMaterial =>
  new MeshBasicMaterial({
    color: colour,
    depthTest: false,
    depthWrite: false,
    transparent: true,
    toneMapped: false,
  })
