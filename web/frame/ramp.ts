/** Way made at time x of a move from 0 to 1 that speeds up and slows down evenly over `ramp`, at most 0.5, each. */
export function ramped(x: number, ramp: number): number {
  const top = 2 * ramp * (1 - ramp)
  if (x < ramp) return (x * x) / top
  if (x > 1 - ramp) return 1 - ((1 - x) * (1 - x)) / top
  return (x - ramp / 2) / (1 - ramp)
}
