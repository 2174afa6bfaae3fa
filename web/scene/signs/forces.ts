/** The forces on the worm as arrows with numbers, and where the bearings sit that answer them. */
import { Group, Mesh, MeshBasicMaterial, TorusGeometry, Vector3 } from 'three'
import type { Layout } from '../../../sim/pose/layout.ts'
import type { ForceArrow, View } from '../../store/view.ts'
import type { Sign } from '../sign.ts'
import { type ArrowKit, type ArrowPaint, arrowKit } from './force-arrow.ts'
import { type Label, type Labels, createLabels } from './labels.ts'
import { pixelsPerMillimetre } from './scale.ts'
import { INK, WHITE } from '../../material/sign-colours.ts'

/** The longest arrow, the shortest, and the thickness of all, in centre distances */
const LONGEST = 1.4
const SHORTEST = 0.3
const THICKNESS = 0.036
/** How far beside its middle the number of the sum stands, in lengths of its arrow */
const SUM_BESIDE = 0.08
/** Parts of the largest force: below the first it is as good as none, below the second its number is minor. */
const LEAST = 0.01
const MINOR = 0.15
/** Centre distance on the screen from which there is room for every number [px] */
const ROOMY = 150

/** Of forces along the worm: whether those to the front (+1) or to the back (-1) end where they act. */
const FRONT_IS_INWARDS: Readonly<Record<ForceArrow['kind'], 1 | 0 | -1>> = {
  adds: 0,
  sum: -1,
  cancels: 0,
  bearing: 1,
}

interface Placed {
  readonly kind: ForceArrow['kind']
  readonly tail: Vector3
  readonly along: Vector3
  readonly length: number
  readonly label: Label
}

/**
 * All to one scale, but none too short to be seen. A force that pushes inwards ends where it acts, any other begins
 * there. The sum acts at the end of the shaft and stands before it; what a bearing answers stands behind the bearing.
 */
function placed(arrow: ForceArrow, scale: number, shortest: number, minor: boolean): Placed {
  const at = new Vector3(...arrow.at)
  const along = new Vector3(...arrow.vector)
  const length = Math.max(shortest, scale * along.length())
  along.normalize()
  const inwards = along.x * at.x + along.y * at.y < 0 || along.z * FRONT_IS_INWARDS[arrow.kind] > 0
  const tail = inwards ? at.clone().addScaledVector(along, -length) : at
  const head = tail.clone().addScaledVector(along, length)
  const label =
    arrow.kind === 'sum'
      ? besideOf(tail, head)
      : inwards
        ? { at: tail, from: head }
        : { at: head, from: tail }
  return { kind: arrow.kind, tail, along, length, label: { text: arrow.label, minor, ...label } }
}

/** The number of the sum stands to the left of it, where the picture is empty; there may be no room beyond its head. */
function besideOf(tail: Vector3, head: Vector3): Pick<Label, 'at' | 'from'> {
  const from = tail.clone().add(head).divideScalar(2)
  const at = from.clone()
  at.x -= SUM_BESIDE * tail.distanceTo(head)
  return { at, from }
}

function placeArrows(arrows: readonly ForceArrow[], unit: number): readonly Placed[] {
  const sizes = arrows.map(({ vector }) => Math.hypot(...vector))
  const largest = Math.max(...sizes, Number.MIN_VALUE)
  return arrows
    .filter((_, n) => sizes[n]! > LEAST * largest)
    .map((arrow) => {
      const minor = Math.hypot(...arrow.vector) < MINOR * largest
      return placed(arrow, (LONGEST * unit) / largest, SHORTEST * unit, minor)
    })
}

/** A ring where the second bearing sits of a worm that overhangs both; it turns nothing, so it is only outlined. */
function bearingRing({ shaft }: Layout): { readonly group: Group; dispose(): void } {
  const group = new Group()
  const parts = [
    { colour: WHITE, thick: 0.13 },
    { colour: INK, thick: 0.075 },
  ].map(({ colour, thick }, order) => {
    const geometry = new TorusGeometry(1.1 * shaft.bearingRadius, thick * shaft.bearingRadius, 10, 56)
    const material = new MeshBasicMaterial({
      color: colour,
      depthTest: false,
      transparent: true,
      toneMapped: false,
    })
    const mesh = new Mesh(geometry, material)
    mesh.renderOrder = 18 + order
    mesh.position.z = 2 * shaft.rearBearing
    group.add(mesh)
    return { geometry, material }
  })
  return {
    group,
    dispose() {
      for (const { geometry, material } of parts) {
        geometry.dispose()
        material.dispose()
      }
    },
  }
}

function ringLabel({ shaft }: Layout): Label {
  const middle = new Vector3(0, 0, 2 * shaft.rearBearing)
  return {
    text: 'Second bearing',
    at: middle.clone().setY(1.3 * shaft.bearingRadius),
    from: middle,
    minor: false,
  }
}

export function forceSign(
  layout: Layout,
  arrows: readonly ForceArrow[],
  support: View['support'],
  canvas: HTMLCanvasElement,
  paint: ArrowPaint,
): Sign {
  const unit = layout.gears.centreDistance
  const kit: ArrowKit = arrowKit(THICKNESS * unit, paint)
  const group = new Group()
  const all = placeArrows(arrows, unit)
  for (const { kind, tail, along, length } of all) group.add(kit.arrow(kind, tail, along, length))
  const overhung = support === 'overhung'
  const ring = overhung ? bearingRing(layout) : null
  if (ring !== null) group.add(ring.group)
  const words = all.map(({ label }) => label)
  // On the page only once the sign is: React may make one that it never shows.
  let labels: Labels | null = null
  let front: { visible: boolean } | null = null
  return {
    object: group,
    paint({ apart, caseState, parts, rig }) {
      const shown = apart === 0 && caseState !== 'closed'
      group.visible = shown
      front = parts.frontBearing
      if (front !== null) front.visible = !overhung
      labels ??= createLabels(canvas, overhung ? [...words, ringLabel(layout)] : words)
      labels.place(rig, shown, unit * pixelsPerMillimetre(rig) > ROOMY)
    },
    dispose() {
      kit.dispose()
      ring?.dispose()
      labels?.dispose()
      if (front !== null) front.visible = true
    },
  }
}
