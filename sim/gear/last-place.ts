/** To the last bits of a double. */
const HALVINGS = 48

/** Place nearest to `wanted`, seen from `sound`, at which `holds` is still true: by halving. */
export function lastPlace(
  sound: number,
  wanted: number,
  holds: (place: number) => boolean,
  halvings = HALVINGS,
): number {
  if (holds(wanted)) return wanted
  let good = sound
  let bad = wanted
  for (let i = 0; i < halvings; i++) {
    const middle = (good + bad) / 2
    if (holds(middle)) good = middle
    else bad = middle
  }
  return good
}
