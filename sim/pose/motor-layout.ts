/** Where the motor's parts sit along the shaft [mm]; its size follows the gears, as the data hold no motor drawing. */
import type { PairProportions } from '../gear/proportions.ts'
import type { Brushes } from '../machine/machine.ts'

export interface MotorLayout {
  readonly radius: number
  readonly front: number
  readonly back: number
  readonly wall: number
  readonly magnetRadius: number
  readonly armatureRadius: number
  readonly armatureFront: number
  readonly armatureBack: number
  readonly commutatorRadius: number
  readonly commutatorFront: number
  readonly commutatorBack: number
  /** Bars of the commutator, and slots of the armature */
  readonly bars: number
  readonly slots: number
  /** Half of what a brush covers of the circumference [rad] */
  readonly brushHalf: number
}

/** Where the data hold no brushes; our choice. */
const USUAL = { bars: 12, brushHalf: 0.22 } as const
/** As many slots as can be told apart, and the widest brush that fits its holder [rad] */
const MOST_SLOTS = 14
const WIDEST = 0.33

/** Each slot holds as many coils as it takes for a coil to every bar. */
function slotsFor(bars: number): number {
  for (let coils = 1; coils <= bars / 3; coils++)
    if (bars % coils === 0 && bars / coils <= MOST_SLOTS) return bars / coils
  return USUAL.bars
}

/** `behind` - z of the rear side of the rear bearing; the commutator begins a little further back. */
export function motorLayout(
  gears: PairProportions,
  shaftRadius: number,
  behind: number,
  brushes: Brushes | null,
): MotorLayout {
  const bars = brushes?.bars ?? USUAL.bars
  const radius = 1.15 * gears.tipRadiusWorm + 0.28 * gears.centreDistance
  const length = 2.9 * radius
  const commutatorFront = behind - 0.34 * radius
  const commutatorBack = commutatorFront - 0.5 * radius
  const armatureFront = commutatorBack - 0.42 * radius
  const armatureBack = armatureFront - 1.45 * radius
  return {
    radius,
    front: commutatorFront + 0.12 * radius,
    back: commutatorFront + 0.12 * radius - length,
    wall: 0.06 * radius,
    magnetRadius: 0.76 * radius,
    armatureRadius: 0.7 * radius,
    armatureFront,
    armatureBack,
    commutatorRadius: Math.max(0.36 * radius, 1.4 * shaftRadius),
    commutatorFront,
    commutatorBack,
    bars,
    slots: slotsFor(bars),
    brushHalf: brushes ? Math.min(WIDEST, brushes.arcWidth / brushes.commutatorDiameter) : USUAL.brushHalf,
  }
}
