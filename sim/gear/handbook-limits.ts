/**
 * Limits of worm gearing by normal pressure angle: R. G. Budynas and J. K. Nisbett, Shigley's Mechanical
 * Engineering Design, 8th to 10th ed., Tables 15-9 (largest lead angle) and 15-10 (least number of teeth), from
 * memory; between rows we interpolate, outside the table the nearest row holds.
 */

type Table = readonly (readonly [number, number])[]

/** Normal pressure angle [deg] to largest lead angle [deg]. */
const LARGEST_LEAD: Table = [
  [14.5, 16],
  [20, 25],
  [25, 35],
  [30, 45],
]
/** Normal pressure angle [deg] to least number of wheel teeth. */
const LEAST_TEETH: Table = [
  [14.5, 40],
  [17.5, 27],
  [20, 21],
  [22.5, 17],
  [25, 14],
  [27.5, 12],
  [30, 10],
]

function interpolated(table: Table, x: number): number {
  let [lowX, lowY] = table[0]!
  if (x <= lowX) return lowY
  for (const [highX, highY] of table) {
    if (x <= highX) return lowY + ((highY - lowY) * (x - lowX)) / (highX - lowX || 1)
    lowX = highX
    lowY = highY
  }
  return lowY
}

/** [deg] over [deg] */
export const largestLead = (pressureAngle: number): number => interpolated(LARGEST_LEAD, pressureAngle)

/** Over normal pressure angle [deg] */
export const leastTeeth = (pressureAngle: number): number =>
  Math.ceil(interpolated(LEAST_TEETH, pressureAngle))
