/**
 * A second way to the wheel, which knows nothing of the first: a general solid kernel takes a worm-shaped hob,
 * built here from h(r) alone, away from the turned blank, position by position, as a hobbing machine does.
 *
 * In the wheel's own frame (wheel-flank.ts) the hob stands at x = -a; when its thread has moved on by s, it
 * has turned by -s/r2 about the wheel's axis. A thread that goes on for ever is the same one pitch further.
 */
import type { Manifold, ManifoldToplevel, Mat4 } from 'manifold-3d'
import loadKernel from 'manifold-3d'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { type PairProportions, pairProportions } from '../../../sim/gear/proportions.ts'
import { threadForm } from '../../../sim/gear/thread-profile.ts'
import { handSign } from '../../../sim/gear/wheel-motion.ts'
import { blankRadius, rootRadius, spaceCutter, type SpaceCutter } from '../../../sim/gear/wheel-space.ts'
import { type Band, bandSolid } from './band-solid.ts'

/** How finely hob and blank are built. */
interface CutDetail {
  /** Pieces of a flank of the hob, and columns round the part of it that can reach the blank */
  readonly flank: number
  readonly columns: number
  /** Planes over the face of the blank, and columns a tooth pitch */
  readonly planes: number
  readonly blankColumns: number
}

/** Facets that stay out of the way of what the steps leave. */
const FINE: CutDetail = { flank: 8, columns: 91, planes: 49, blankColumns: 20 }
/** Facets as coarse as those of a wheel for the stage. */
export const COARSE: CutDetail = { flank: 2, columns: 25, planes: 13, blankColumns: 4 }
/** What of the hob is built: this far round to each side [rad], and as many threads up and down. */
const HALF_ANGLE = 0.9
const THREADS = 4
/** The hob's own core and the blank's inside, both out of reach of the cut, as parts of a radius. */
const CORE = 0.8
const INSIDE = 0.88
/**
 * Where the steps start, in steps from the place where a thread stands in the middle of a space. At the even
 * places the figures of few steps a pitch are up to a third smaller or larger by chance.
 */
const START = 0.1

export interface Cutting {
  readonly detail: CutDetail
  readonly kernel: ManifoldToplevel
  readonly pair: PairProportions
  readonly cutter: SpaceCutter
  readonly hob: Manifold
  readonly faceWidth: number
  /** [mm] from the wheel's axis */
  readonly insideRadius: number
}

export async function solidKernel(): Promise<ManifoldToplevel> {
  const kernel = await loadKernel()
  kernel.setup()
  return kernel
}

export async function startCutting(gearing: GearNumbers, detail = FINE): Promise<Cutting> {
  const kernel = await solidKernel()
  const cutter = spaceCutter(gearing)
  return {
    detail,
    kernel,
    pair: pairProportions(gearing),
    cutter,
    hob: bandSolid(kernel, hobBand(gearing, cutter, detail)),
    faceWidth: gearing.wheelWidth,
    insideRadius: INSIDE * rootRadius(cutter, 0),
  }
}

/** The thread of the worm, full, and as high as the wheel's root asks. */
function hobBand(gearing: GearNumbers, cutter: SpaceCutter, { flank, columns }: CutDetail): Band {
  const { axialPitch: px, rootRadiusWorm: low, screwParameter: p } = pairProportions(gearing)
  const { halfThickness: h } = threadForm(gearing)
  const P = handSign(gearing.hand) * p
  const radius = (i: number) => low + ((cutter.limits.hobTip - low) * i) / flank
  const rows: [r: number, z: number][] = []
  for (let k = -THREADS; k <= THREADS; k++) {
    for (let i = 0; i <= flank; i++) rows.push([radius(i), k * px - h(radius(i))])
    for (let i = flank; i >= 0; i--) rows.push([radius(i), k * px + h(radius(i))])
  }
  return {
    rows: rows.length,
    columns,
    closed: false,
    point: (i, j, upper) => {
      const theta = HALF_ANGLE * ((2 * j) / (columns - 1) - 1)
      const r = upper ? rows[i]![0] : CORE * low
      return [r * Math.cos(theta), r * Math.sin(theta), P * theta + rows[i]![1]]
    },
  }
}

/** The turned blank over so many tooth pitches about the middle of space 0, or all the way round. */
function blank({ kernel, cutter, faceWidth, insideRadius, detail }: Cutting, pitches: number): Manifold {
  const { planes, blankColumns } = detail
  const closed = pitches * cutter.toothPitch > 2 * Math.PI - 1e-9
  return bandSolid(kernel, {
    rows: planes,
    columns: blankColumns * pitches + (closed ? 0 : 1),
    closed,
    point: (i, j, upper) => {
      const y = faceWidth * (i / (planes - 1) - 1 / 2)
      const chi = cutter.toothPitch * (j / blankColumns - pitches / 2)
      const R = upper ? blankRadius(cutter, y) : insideRadius
      return [-R * Math.cos(chi), y, R * Math.sin(chi)]
    },
  })
}

/** Where the hob stands when its thread has moved on by s, as columns of a matrix. */
function hobPlace({ pair }: Cutting, s: number): Mat4 {
  const { axialPitch: px, referenceRadiusWheel: r2, centreDistance: a } = pair
  const along = s - Math.round(s / px) * px
  const c = Math.cos(-s / r2)
  const n = Math.sin(-s / r2)
  return [c, 0, -n, 0, 0, 1, 0, 0, n, 0, c, 0, along * n - a * c, 0, a * n + along * c, 1]
}

/** Cuts with the hob at every place from the step `first` on; takes `solid` over. */
function cutFrom(cutting: Cutting, solid: Manifold, first: number, count: number, steps: number): Manifold {
  let left = solid
  for (let n = first; n < first + count; n++) {
    const hob = cutting.hob.transform(hobPlace(cutting, ((n + START) * cutting.pair.axialPitch) / steps))
    const cut = left.subtract(hob)
    // The kernel puts its work off until something is asked of the result.
    cut.numTri()
    hob.delete()
    left.delete()
    left = cut
  }
  return left
}

/** A piece of the wheel with `steps` cuts a pitch; the tooth space in its middle is finished. */
export function cutPiece(cutting: Cutting, pitches: number, steps: number): Manifold {
  const { cutter } = cutting
  const reach = Math.acos(rootRadius(cutter, 0) / cutter.outsideRadius) / cutter.toothPitch
  const first = -Math.ceil((reach + 1 / 2) * steps)
  return cutFrom(cutting, blank(cutting, pitches), first, 1 - 2 * first, steps)
}

/** The whole wheel, cut all round. */
export function cutWheel(cutting: Cutting, teeth: number, steps: number): Manifold {
  return cutFrom(cutting, blank(cutting, teeth), 0, teeth * steps, steps)
}

/** One space cut, copied all round and united: the cheapest honest use of such a kernel. */
export function cutAndCopied(cutting: Cutting, teeth: number, steps: number): Manifold {
  const whole = cutPiece(cutting, 1, steps)
  const copies = Array.from({ length: teeth }, (_, k) => whole.rotate(0, (360 * k) / teeth, 0))
  const united = cutting.kernel.Manifold.union(copies)
  united.numTri()
  for (const copy of copies) copy.delete()
  whole.delete()
  return united
}
