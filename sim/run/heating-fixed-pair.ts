export type Pair = readonly [number, number]

const MOST_ROUNDS = 100
/** How closely the pair is found [K], and the difference by which the map's slopes are taken [K]. */
const NEARNESS = 1e-9
const DIFFERENCE = 1e-3
/** Largest step that the slopes are trusted for [K]. */
const TRUST = 60

/**
 * The lowest pair of temperatures that a map turns into itself, begun from below; null where there is none with a first
 * member under `most`. For maps that grow with both members, as heating does: each round takes Newton's step from
 * numeric slopes where it leads on upwards and not too far, otherwise the map's own step, which never passes the lowest
 * pair.
 */
export function fixedPair(from: Pair, most: number, map: (pair: Pair) => Pair): Pair | null {
  let pair = from
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const image = map(pair)
    const miss: Pair = [image[0] - pair[0], image[1] - pair[1]]
    if (!(Math.abs(miss[0]) < Infinity && Math.abs(miss[1]) < Infinity)) return null
    if (Math.max(Math.abs(miss[0]), Math.abs(miss[1])) < NEARNESS) return image
    const step = newtonStep(pair, image, miss, map)
    pair = step ? [pair[0] + step[0], pair[1] + step[1]] : limited(pair, image)
    if (pair[0] >= most) return null
  }
  return null
}

/** The map's own step, no longer than the trust. */
function limited(pair: Pair, image: Pair): Pair {
  const size = Math.max(Math.abs(image[0] - pair[0]), Math.abs(image[1] - pair[1]))
  const part = Math.min(1, TRUST / size)
  return [pair[0] + part * (image[0] - pair[0]), pair[1] + part * (image[1] - pair[1])]
}

/** Newton's step towards a pair that stays as it is; null where the slopes say that there is none that way. */
function newtonStep(pair: Pair, image: Pair, miss: Pair, map: (pair: Pair) => Pair): Pair | null {
  const first = map([pair[0] + DIFFERENCE, pair[1]])
  const second = map([pair[0], pair[1] + DIFFERENCE])
  const a = 1 - (first[0] - image[0]) / DIFFERENCE
  const b = -(second[0] - image[0]) / DIFFERENCE
  const c = -(first[1] - image[1]) / DIFFERENCE
  const d = 1 - (second[1] - image[1]) / DIFFERENCE
  const determinant = a * d - b * c
  // A map that amplifies has no pair ahead that it would come to.
  if (!(a > 0 && d > 0 && determinant > 0)) return null
  const step: Pair = [(d * miss[0] - b * miss[1]) / determinant, (a * miss[1] - c * miss[0]) / determinant]
  return Math.max(Math.abs(step[0]), Math.abs(step[1])) <= TRUST ? step : null
}
