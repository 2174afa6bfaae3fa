/** Outlines of the drawn view from above [mm]: x to the right, y of the drawing along the worm towards the viewer. */
import type { PowerStop } from '../store/view.ts'

/** Class of a body that the light on the power's way can stand on. */
export const planBody = (lit: PowerStop | null, ...stops: readonly PowerStop[]): string =>
  lit !== null && stops.includes(lit) ? 'plan-body plan-lit' : 'plan-body'

/** What decides the shape of a wheel's teeth in the middle plane */
export interface WheelOutline {
  readonly teeth: number
  readonly axialModule: number
  readonly rootRadius: number
  readonly tipRadius: number
  /** [rad] */
  readonly axialPressureAngle: number
}

const involute = (angle: number): number => Math.tan(angle) - angle

/**
 * Half the angle that a tooth fills at radius r [rad]. In the middle plane a worm with straight axial flanks is a
 * rack, so the wheel is an involute gear: psi(r) = pi/(2 z2) + inv(alpha) - inv(arccos(rb/r)), rb = r2 cos(alpha);
 * inside the base circle the flank is drawn radial. Undercut is not drawn. Derived here.
 */
export function halfTooth(
  { teeth, axialModule, axialPressureAngle: alpha }: WheelOutline,
  r: number,
): number {
  const base = 0.5 * axialModule * teeth * Math.cos(alpha)
  const inside = Math.acos(Math.min(1, base / r))
  const pitch = Math.PI / teeth
  const angle = pitch / 2 + involute(alpha) - involute(inside)
  return Math.min(0.98 * pitch, Math.max(0.04 * pitch, angle))
}

const FLANK_POINTS = 5
const point = (x: number, y: number): string => `${x.toFixed(3)} ${y.toFixed(3)}`

/**
 * Closed path of the whole wheel about its own axis. Angle 0 points to -x and grows towards the viewer; a tooth space
 * lies there.
 */
export function wheelPath(wheel: WheelOutline): string {
  const { teeth, rootRadius, tipRadius } = wheel
  const points: string[] = []
  const put = (r: number, angle: number) => points.push(point(-r * Math.cos(angle), r * Math.sin(angle)))
  for (let tooth = 0; tooth < teeth; tooth++) {
    const middle = ((tooth + 0.5) * 2 * Math.PI) / teeth
    for (const side of [-1, 1]) {
      for (let i = 0; i <= FLANK_POINTS; i++) {
        const out = side < 0 ? i / FLANK_POINTS : 1 - i / FLANK_POINTS
        const r = rootRadius + out * (tipRadius - rootRadius)
        put(r, middle + side * halfTooth(wheel, r))
      }
    }
  }
  return `M${points.join('L')}Z`
}

export interface ThreadOutline {
  readonly starts: number
  /** +1 right-hand, -1 left-hand */
  readonly hand: 1 | -1
  readonly axialModule: number
  readonly rootRadius: number
  readonly tipRadius: number
  /** [rad] */
  readonly axialPressureAngle: number
  readonly length: number
}

const CREST_POINTS = 8

/** One thread as it is seen from above, from its flank on the right over the crest to its flank on the left. */
function threadPath(thread: ThreadOutline, at: number): string {
  const { starts, hand, axialModule: m, rootRadius, tipRadius, axialPressureAngle } = thread
  const crest = m * (Math.PI / 4 - Math.tan(axialPressureAngle))
  const foot = crest + (tipRadius - rootRadius) * Math.tan(axialPressureAngle)
  const halfLead = (starts * Math.PI * m) / 2
  const edge = (shift: number) =>
    Array.from({ length: CREST_POINTS + 1 }, (_, i) => {
      const angle = (Math.PI * i) / CREST_POINTS
      return point(tipRadius * Math.cos(angle), at + shift + (hand * halfLead * angle) / Math.PI)
    })
  const left = at + hand * halfLead
  const there = [point(rootRadius, at - foot), ...edge(-crest), point(-rootRadius, left - foot)]
  const back = [point(-rootRadius, left + foot), ...edge(crest).reverse(), point(rootRadius, at + foot)]
  return `M${there.join('L')}L${back.join('L')}Z`
}

/**
 * All threads that can come into view while the pattern moves by up to one axial pitch. At zero turns a crest stands
 * at the middle of the right-hand side.
 */
export function threadPaths(thread: ThreadOutline): string {
  const pitch = Math.PI * thread.axialModule
  const beyond = thread.length / 2 + thread.starts * pitch
  const threads: string[] = []
  for (let k = -Math.ceil(beyond / pitch); k <= Math.ceil(beyond / pitch); k++)
    threads.push(threadPath(thread, k * pitch))
  return threads.join('')
}

/**
 * How far the threads have moved along the worm [mm], in an axial pitch: a right-hand worm that turns about the axis
 * towards the viewer moves its threads away from him.
 */
export const threadShift = ({ starts, hand, axialModule }: ThreadOutline, wormPart: number): number =>
  -hand * Math.PI * axialModule * ((starts * wormPart) % 1)
