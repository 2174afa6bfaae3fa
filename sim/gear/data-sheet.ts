/**
 * The numbers that a drawing of a worm and its wheel carries, in the order in which a gear cutter asks for
 * them. What belongs on such a drawing: ISO 1340 and ISO 10828, from memory, in our own words.
 */
import { degrees } from '../quantity/convert.ts'
import { contactRatio } from './contact-ratio.ts'
import type { GearNumbers, ThreadProfile, WheelForm } from './gear-numbers.ts'
import {
  type BallSeat,
  seatOfBall,
  ballTouchingAt,
  threadChord,
  threadSpace,
  toothChord,
} from './over-balls.ts'
import { type PairProportions, baseLeadAngle, baseRadius, pairProportions } from './proportions.ts'
import { thinnedThreadForm, thinning, threadForm } from './thread-profile.ts'
import { toothLimits } from './tooth-limits.ts'

export interface SheetRow {
  readonly name: string
  /** With '_' before what stands below the line: 'd_a1' */
  readonly symbol: string
  readonly value: number | string
  readonly unit: string
  /** Decimals worth writing */
  readonly digits: number
}

export interface SheetTable {
  readonly title: string
  readonly rows: readonly SheetRow[]
}

const PROFILE_WORDS: Readonly<Record<ThreadProfile, string>> = {
  ZA: 'ZA, straight in the axial section',
  ZN: 'ZN, straight in the normal section',
  ZI: 'ZI, involute helicoid',
  ZK: 'ZK, made by a conical disc',
}
const FORM_WORDS: Readonly<Record<WheelForm, string>> = {
  throated: 'throated, line contact',
  helical: 'helical, point contact',
}

/** Balls and pins are taken from the next twentieth of a millimetre up (our choice). */
const BALL_STEP = 0.05

const mm = (name: string, symbol: string, value: number, digits = 3): SheetRow => ({
  name,
  symbol,
  value,
  unit: 'mm',
  digits,
})
const angle = (name: string, symbol: string, value: number): SheetRow => ({
  name,
  symbol,
  value: degrees(value),
  unit: 'deg',
  digits: 4,
})
const count = (name: string, symbol: string, value: number, digits = 0): SheetRow => ({
  name,
  symbol,
  value,
  unit: '',
  digits,
})
const words = (name: string, value: string): SheetRow => ({ name, symbol: '', value, unit: '', digits: 0 })

interface Sheet {
  readonly gearing: GearNumbers
  readonly pair: PairProportions
}

/** Three tables: worm, wheel, pair. */
export function gearDataSheet(gearing: GearNumbers): readonly SheetTable[] {
  const sheet: Sheet = { gearing, pair: pairProportions(gearing) }
  return [
    { title: 'Worm', rows: wormRows(sheet) },
    { title: 'Wheel, two alike', rows: wheelRows(sheet) },
    { title: 'Pair', rows: pairRows(sheet) },
  ]
}

function wormRows(sheet: Sheet): SheetRow[] {
  const { gearing, pair } = sheet
  return [
    count('Number of starts', 'z_1', gearing.wormStarts),
    words('Hand of thread', gearing.hand),
    words('Profile', PROFILE_WORDS[gearing.profile]),
    mm('Axial module', 'm_x', gearing.axialModule),
    mm('Normal module', 'm_n', pair.normalModule),
    count('Diameter quotient', 'q', gearing.diameterQuotient, 3),
    angle('Normal pressure angle', 'α_n', pair.normalPressureAngle),
    angle('Axial pressure angle', 'α_x', pair.axialPressureAngle),
    angle('Lead angle', 'γ', pair.leadAngle),
    mm('Axial pitch', 'p_x', pair.axialPitch, 4),
    mm('Lead', 'p_z', pair.lead, 4),
    mm('Reference diameter', 'd_1', 2 * pair.referenceRadiusWorm),
    mm('Tip diameter', 'd_a1', 2 * pair.tipRadiusWorm),
    mm('Root diameter', 'd_f1', 2 * pair.rootRadiusWorm),
    mm('Addendum', 'h_a1', pair.addendumWorm),
    mm('Thread depth', 'h_1', pair.addendumWorm + pair.dedendumWorm),
    mm('Thread length, least', 'b_1', pair.threadLength, 2),
    ...profileRows(sheet),
    ...threadThicknessRows(sheet),
    count('Teeth of the mating wheel', 'z_2', gearing.wheelTeeth),
  ]
}

/** What only one profile asks for. */
function profileRows({ gearing, pair }: Sheet): SheetRow[] {
  if (gearing.profile === 'ZK') return [mm('Mean diameter of the disc', 'd_0', gearing.discDiameter)]
  if (gearing.profile !== 'ZI') return []
  const gb = baseLeadAngle(pair.leadAngle, pair.normalPressureAngle)
  return [
    mm('Base diameter', 'd_b1', 2 * baseRadius(pair.screwParameter, gb)),
    angle('Base lead angle', 'γ_b', gb),
  ]
}

/** Thickness of the thread along the axis at the reference cylinder [mm] */
const threadThickness = ({ gearing, pair }: Sheet): number =>
  pair.axialPitch / 2 - 2 * thinning('worm', gearing)

function threadThicknessRows(sheet: Sheet): SheetRow[] {
  const { pair } = sheet
  const sx = threadThickness(sheet)
  const chord = threadChord(sx, pair.leadAngle, 2 * pair.referenceRadiusWorm, pair.addendumWorm)
  const seat = measuringBall(sheet)
  const overBalls = seat
    ? [
        mm('Ball or pin to measure with', 'D_M', 2 * seat.ballRadius, 2),
        mm('Size over three balls or pins', 'M_1', 2 * (seat.centreRadius + seat.ballRadius)),
      ]
    : []
  return [
    mm('Axial thread thickness', 's_x1', sx),
    mm('Normal chordal thickness', 's_n1', chord.thickness),
    mm('Chordal height from the tip', 'h_n1', chord.height),
    ...overBalls,
  ]
}

/**
 * The ball that touches near the reference cylinder; null where none stands clear of root and tip. Between
 * parallel anvils two lie on one side and one on the other, which gives the same size for odd starts.
 */
function measuringBall({ gearing, pair }: Sheet): BallSeat | null {
  const { wormRoot, wormTip } = toothLimits(gearing)
  const space = threadSpace(thinnedThreadForm(gearing), pair.axialPitch, pair.screwParameter)
  const ideal = 2 * ballTouchingAt(space, pair.referenceRadiusWorm).ballRadius
  const ballRadius = (Math.ceil(ideal / BALL_STEP) * BALL_STEP) / 2
  const seat = seatOfBall(space, ballRadius, wormRoot, wormTip)
  if (seat === null) return null
  const { centreRadius } = seat
  return centreRadius + ballRadius > wormTip && centreRadius - ballRadius > wormRoot ? seat : null
}

/**
 * Thickness of the tooth on the reference circle in the mid-plane [mm]. That circle rolls without slip on the
 * line x = a - r2 of the worm's section, so the space is as wide as the thread is thick there. A helical
 * wheel is cut by a straight rack instead.
 */
function toothThickness({ gearing, pair }: Sheet): number {
  const off = 2 * thinning('wheel', gearing)
  const line = pair.centreDistance - pair.referenceRadiusWheel
  if (gearing.wheelForm === 'helical') {
    const shift = line - pair.referenceRadiusWorm
    return pair.axialPitch / 2 + 2 * shift * Math.tan(pair.axialPressureAngle) - off
  }
  return pair.axialPitch - 2 * threadForm(gearing).halfThickness(line) - off
}

function wheelRows(sheet: Sheet): SheetRow[] {
  const { gearing, pair } = sheet
  const st = toothThickness(sheet)
  const chord = toothChord(st, pair.leadAngle, gearing.wheelTeeth, pair.normalModule, pair.addendumWheel)
  const throated = gearing.wheelForm === 'throated'
  return [
    count('Number of teeth', 'z_2', gearing.wheelTeeth),
    words('Hand of teeth', gearing.hand),
    words('Form', FORM_WORDS[gearing.wheelForm]),
    mm('Transverse module', 'm_t2', gearing.axialModule),
    angle('Helix angle', 'β_2', pair.leadAngle),
    count('Profile shift coefficient', 'x_2', pair.profileShift, 4),
    mm('Reference diameter', 'd_2', 2 * pair.referenceRadiusWheel),
    mm(throated ? 'Throat diameter' : 'Tip diameter', 'd_a2', 2 * pair.throatRadiusWheel),
    mm('Root diameter', 'd_f2', 2 * pair.rootRadiusWheel),
    ...(throated
      ? [
          mm('Outside diameter', 'd_e2', 2 * pair.outsideRadiusWheel),
          mm('Throat form radius', 'r_g2', pair.gorgeRadius),
        ]
      : []),
    mm('Addendum', 'h_a2', pair.addendumWheel),
    mm('Tooth depth', 'h_2', pair.addendumWheel + pair.dedendumWheel),
    mm('Face width', 'b_2', pair.wheelWidth, 2),
    mm('Bore', 'd_B', gearing.boreDiameter, 2),
    mm('Tooth thickness, mid-plane', 's_t2', st),
    mm('Normal chordal thickness', 's_n2', chord.thickness),
    mm(`Chordal height from the ${throated ? 'throat' : 'tip'}`, 'h_n2', chord.height),
    count('Starts of the mating worm', 'z_1', gearing.wormStarts),
  ]
}

function pairRows({ gearing, pair }: Sheet): SheetRow[] {
  const { backlash: jx, wormStarts: z1, wheelTeeth: z2 } = gearing
  return [
    mm('Centre distance', 'a', pair.centreDistance),
    angle('Shaft angle', 'Σ', Math.PI / 2),
    count('Ratio', 'u', z2 / z1, Number.isInteger(z2 / z1) ? 0 : 4),
    mm('Clearance under the thread', 'c_1', pair.clearanceWheelTip),
    mm('Clearance under the tooth', 'c_2', pair.clearanceWormTip),
    mm('Axial backlash', 'j_x', jx),
    mm('Normal backlash', 'j_n', pair.normalBacklash),
    angle('Play of the wheel', 'φ_2', pair.wheelPlay),
    angle('Play of the worm', 'φ_1', pair.wormPlay),
    words('Thinned for backlash', jx === 0 ? 'none' : gearing.thinned),
    ...contactRows(gearing),
  ]
}

/** Teeth in mesh; a helical wheel touches in one point, so that it has one ratio. */
function contactRows(gearing: GearNumbers): SheetRow[] {
  const { midPlane, total } = contactRatio(gearing)
  if (gearing.wheelForm === 'helical') return [count('Contact ratio', 'ε', total, 3)]
  return [
    count('Contact ratio, mid-plane', 'ε_m', midPlane, 3),
    count('Contact ratio, whole face', 'ε', total, 3),
  ]
}
