/** What follows from a machine's numbers before anything turns. */
import { selfLocking, wheelDrivingEfficiency, wormDrivingEfficiency } from '../../sim/gear/efficiency.ts'
import { contactRatio } from '../../sim/gear/contact-ratio.ts'
import { type PairProportions, pairProportions } from '../../sim/gear/proportions.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { degrees } from '../../sim/quantity/convert.ts'
import type { FormulaId } from '../instrument/formulas.ts'
import { quantityText } from '../instrument/reading-text.ts'

export interface Fact {
  readonly name: string
  readonly text: string
  readonly formula?: FormulaId
}

/** How the pair stands and fits; the numbers that are given themselves are in the fields. */
function fitFacts(gearing: Machine['gearing'], pair: PairProportions): readonly Fact[] {
  return [
    { name: 'Profile shift of the wheel', text: quantityText(pair.profileShift, '') },
    { name: 'Clearance at the worm’s tip', text: quantityText(pair.clearanceWormTip, 'mm') },
    { name: 'Clearance at the wheel’s tip', text: quantityText(pair.clearanceWheelTip, 'mm') },
    {
      name: 'Backlash at the wheel',
      text: quantityText(degrees(pair.wheelPlay), '°'),
      formula: 'wheelPlay',
    },
    { name: 'Contact ratio', text: quantityText(contactRatio(gearing).total, '') },
    { name: 'Pressure angle along the worm', text: quantityText(degrees(pair.axialPressureAngle), '°') },
    {
      name: 'Pressure angle across the worm',
      text: quantityText(degrees(pair.transversePressureAngle), '°'),
    },
  ]
}

export function designFacts({ gearing }: Machine): readonly Fact[] {
  const pair = pairProportions(gearing)
  const { leadAngle: g, normalPressureAngle: alphaN } = pair
  const forward = wormDrivingEfficiency(g, alphaN, gearing.friction)
  const back = wheelDrivingEfficiency(g, alphaN, gearing.friction)
  return [
    { name: 'Lead angle', text: quantityText(degrees(g), '°'), formula: 'leadAngle' },
    { name: 'Centre distance', text: quantityText(pair.centreDistance, 'mm'), formula: 'centreDistance' },
    {
      name: 'Worm diameter',
      text: quantityText(2 * pair.referenceRadiusWorm, 'mm'),
      formula: 'wormDiameter',
    },
    {
      name: 'Wheel diameter',
      text: quantityText(2 * pair.referenceRadiusWheel, 'mm'),
      formula: 'wheelDiameter',
    },
    { name: 'Lead', text: quantityText(pair.lead, 'mm'), formula: 'lead' },
    { name: 'Widest useful wheel', text: quantityText(pair.fullWheelWidth, 'mm'), formula: 'fullWheelWidth' },
    { name: 'Mesh efficiency', text: quantityText(100 * forward, '%'), formula: 'meshEfficiency' },
    {
      name: 'Mesh efficiency, wheel driving',
      text: back > 0 ? quantityText(100 * back, '%') : 'none',
      formula: 'backEfficiency',
    },
    {
      name: 'Friction that locks',
      text: quantityText(Math.cos(alphaN) * Math.tan(g), ''),
      formula: 'lockingFriction',
    },
    ...fitFacts(gearing, pair),
  ]
}

const LOCKING: Record<ReturnType<typeof selfLocking>, string> = {
  locks: 'Self-locking: the wheels cannot turn the worm, whatever their load.',
  nearly: 'Nearly self-locking: the wheels can just turn the worm, and a little more friction stops that.',
  'back-drives': 'Turns back: the wheels can drive the worm when nothing holds it.',
}

/** Running friction decides here; a mesh at rest grips harder, and shaking may still let it creep. */
export function lockingWords({ gearing }: Machine): string {
  const { leadAngle, normalPressureAngle } = pairProportions(gearing)
  return LOCKING[selfLocking(leadAngle, normalPressureAngle, gearing.friction)]
}
