/**
 * Current turning over in a coil under a brush, and how hard that is on the brush; taught, hence "indicative". Straight
 * commutation and mean reactance voltage: textbooks of direct-current machines, from memory.
 */

/**
 * Time in which a coil's current turns over [s]: bb/(pi Dc n); Infinity at standstill.
 *
 * bb - width of a brush along the circumference [m]
 * Dc - commutator diameter [m]
 * n  - speed [turn/s]
 */
export const commutationTime = (bb: number, Dc: number, n: number): number =>
  bb / (Math.PI * Dc * Math.abs(n))

/**
 * Mean reactance voltage [V]: Lc Ia/tc. Each of two paths carries Ia/2, so a coil's current changes by Ia.
 *
 * Lc - inductance of a coil [H]
 * Ia - armature current [A]
 * tc - commutation time [s]
 */
export const reactanceVoltage = (Lc: number, Ia: number, tc: number): number => (Lc * Math.abs(Ia)) / tc

/**
 * Voltage of an alternating flux in a coil that a brush shorts [V r.m.s.]: sqrt 2 pi f Nc phim.
 *
 * f    - [Hz]; 0 for direct current
 * Nc   - turns of a coil
 * phim - peak flux through the coil [Wb]
 */
export const transformerVoltage = (f: number, Nc: number, phim: number): number =>
  Math.SQRT2 * Math.PI * f * Nc * phim

/** Index of commutation s = (er + et)/eref; eref is usually half of the pair's drop [V], > 0. */
export const commutationIndex = (er: number, et: number, eref: number): number => (er + et) / eref

/** Current density under a brush [A/m2] from the current [A r.m.s.] and the contact area of one brush [m2]. */
export const brushDensity = (I: number, area: number): number => Math.abs(I) / area

/** Sparking as it is graded by eye. */
export interface SparkGrade {
  /** Index below which the grade is given; derived here, no published limits */
  readonly below: number
  readonly grade: '1' | '1 1/4' | '1 1/2' | '2' | '3'
  readonly words: string
}

/** Names of the scale and what is seen: national practice for direct-current machines (GOST 183), from memory. */
export const SPARK_GRADES: readonly SparkGrade[] = [
  { below: 0.5, grade: '1', words: 'No sparks' },
  { below: 0.8, grade: '1 1/4', words: 'Faint points of light on part of the edge' },
  { below: 1.2, grade: '1 1/2', words: 'Faint sparks under most of the edge: the most for lasting use' },
  { below: 2, grade: '2', words: 'Sparks under the whole edge: only for a short overload' },
  { below: Infinity, grade: '3', words: 'Strong sparks: must not run like this' },
]

/** Grade by the worse of the index of commutation and density over its limit. */
export function sparkGrade(index: number, densityRatio: number): SparkGrade {
  const worse = Math.max(index, densityRatio)
  return SPARK_GRADES.find(({ below }) => worse < below) ?? SPARK_GRADES.at(-1)!
}

/**
 * Current of a coil [A] over the angle [rad] from the middle of a brush, straight commutation: Ia/2 before, -Ia/2
 * after, in proportion under the brush. The brush of the other sign, half a turn on, turns it back.
 *
 * arc - angle that a brush covers, 2 bb/Dc [rad], in (0, pi]
 */
export function coilCurrent(Ia: number, angle: number, arc: number): number {
  const turned = angle - 2 * Math.PI * Math.floor(angle / (2 * Math.PI) + 0.25)
  const fromBrush = turned < Math.PI / 2 ? turned : turned - Math.PI
  const sense = turned < Math.PI / 2 ? 1 : -1
  return (Ia / 2) * sense * Math.max(-1, Math.min(1, (-2 * fromBrush) / arc))
}

/** Angle that a brush covers [rad]. */
export const brushArc = (bb: number, Dc: number): number => (2 * bb) / Dc
