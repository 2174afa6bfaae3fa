/** The three.js objects that the loop moves; components put them here, the loop only writes to them. */
import type { Group, Mesh, Object3D, ShaderMaterial } from 'three'
import { PART_NAMES, type PartName } from '../../sim/pose/parts.ts'
import { POSE_STRIDE } from '../../sim/pose/pose.ts'

export type Turner = 'worm' | 'left' | 'right'

export interface MovingParts {
  /** In the order of PART_NAMES; null where the machine lacks the part. */
  readonly groups: (Group | null)[]
  /** Painted marks, blur arcs and arrows of worm, left and right wheel. */
  readonly marks: Record<Turner, Object3D | null>
  readonly blurs: Record<Turner, Mesh | null>
  readonly arrows: Record<Turner, Object3D | null>
  /** Pointers of the wheels; the worm's stands still. */
  readonly pointers: Record<Turner, Object3D | null>
  /** Veils over teeth, thread, slots and bars, for when those are too fast. */
  readonly veils: Record<Turner, Object3D | null>
  readonly blurMaterials: Record<Turner, ShaderMaterial | null>
  fan: Object3D | null
  /** Without the pointer that it carries */
  frontBearing: Object3D | null
  fanBlur: Object3D | null
}

const none = <T>(): Record<Turner, T | null> => ({ worm: null, left: null, right: null })

export const newMovingParts = (): MovingParts => ({
  groups: PART_NAMES.map(() => null),
  marks: none<Object3D>(),
  blurs: none<Mesh>(),
  arrows: none<Object3D>(),
  veils: none<Object3D>(),
  pointers: none<Object3D>(),
  blurMaterials: none<ShaderMaterial>(),
  fan: null,
  frontBearing: null,
  fanBlur: null,
})

export const TURNER_OF: Partial<Record<PartName, Turner>> = {
  rotor: 'worm',
  leftWheel: 'left',
  rightWheel: 'right',
}

export function applyPoses(parts: MovingParts, poses: Float32Array): void {
  for (let i = 0; i < parts.groups.length; i++) {
    const group = parts.groups[i]
    if (group === null || group === undefined) continue
    group.position.fromArray(poses, i * POSE_STRIDE)
    group.quaternion.fromArray(poses, i * POSE_STRIDE + 3)
  }
}

/** Turns a frame, from which a mark counts as too fast to be followed: 0.8 of the half turn that would alias. */
const TOO_FAST = 0.4
const TURN = 2 * Math.PI

/** Shows a turner's mark, or the arc it passed in one frame. `turned` - turns a frame, signed about its axis. */
function showMark(parts: MovingParts, turner: Turner, turned: number, wanted: boolean): boolean {
  const fast = Math.abs(turned) > TOO_FAST
  const [mark, blur, material] = [parts.marks[turner], parts.blurs[turner], parts.blurMaterials[turner]]
  if (mark !== null) mark.visible = wanted && !fast
  if (blur !== null) blur.visible = wanted && fast
  const uniform = material?.uniforms['turned']
  if (uniform !== undefined) uniform.value = turned * TURN
  return fast
}

/** `sense` - of the worm about +z as the arrows show it; the arrows are drawn for a positive turn about their axis. */
function showArrow(parts: MovingParts, turner: Turner, sense: number, wanted: boolean): void {
  const arrow = parts.arrows[turner]
  if (arrow === null) return
  arrow.visible = wanted
  arrow.scale.x = sense
}

/** Marks or arcs, arrows, fan. Returns whether the worm is too fast for its mark. */
export function showMotion(
  parts: MovingParts,
  layout: {
    readonly leftSense: number
    readonly rightSense: number
    readonly starts: number
    readonly teeth: number
  },
  turned: number,
  sense: number,
  marks: boolean,
  arrows: boolean,
): boolean {
  const wheel = (turned * layout.starts) / layout.teeth
  const fast = showMark(parts, 'worm', turned, marks)
  showMark(parts, 'left', layout.leftSense * wheel, marks)
  showMark(parts, 'right', layout.rightSense * wheel, marks)
  const teethFast = Math.abs(wheel * layout.teeth) > TOO_FAST
  // The thread looks the same again after one start, the armature sooner; its mark has hidden it until then.
  if (parts.veils.worm !== null) parts.veils.worm.visible = Math.abs(turned * layout.starts) > TOO_FAST
  if (parts.veils.left !== null) parts.veils.left.visible = teethFast
  if (parts.veils.right !== null) parts.veils.right.visible = teethFast
  showArrow(parts, 'worm', sense, arrows)
  showArrow(parts, 'left', layout.leftSense * sense, arrows)
  showArrow(parts, 'right', layout.rightSense * sense, arrows)
  if (parts.fan !== null) parts.fan.visible = !fast
  if (parts.fanBlur !== null) parts.fanBlur.visible = fast
  return fast
}

/** Those of the wheels stand in front of their teeth. */
export function showPointers({ pointers: { left, right } }: MovingParts, shown: boolean): void {
  if (left !== null) left.visible = shown
  if (right !== null) right.visible = shown
}
