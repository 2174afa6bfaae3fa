export type Pair = readonly [number, number]

/** What a map is good for: how closely it can be met, and the difference by which its slopes are taken [K]. */
export interface Fineness {
  readonly nearness: number
  readonly difference: number
}

const MOST_ROUNDS = 100
/** Largest step that the slopes are trusted for [K]. */
const TRUST = 60

/**
 * The lowest pair of temperatures that a map turns into itself, begun from below; null where there is none with a first
 * member under `most`. For maps that grow with both members, as heating does: each round takes Newton's step from
 * numeric slopes where it leads on upwards and not too far, otherwise the map's own step, which never passes the lowest
 * pair.
 */
export function fixedPair(
  from: Pair,
  most: number,
  { nearness, difference }: Fineness,
  map: (pair: Pair) => Pair,
): Pair | null {
  let pair = from
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const image = map(pair)
    const miss = distance(pair, image)
    if (!(miss < Infinity)) return null
    if (miss < nearness) return image
    const step = newtonStep(pair, image, difference, map)
    pair = step ? [pair[0] + step[0], pair[1] + step[1]] : limited(pair, image)
    if (pair[0] >= most) return null
  }
  return null
}

const distance = (one: Pair, other: Pair): number =>
  Math.max(Math.abs(other[0] - one[0]), Math.abs(other[1] - one[1]))

/** The map's own step, no longer than the trust. */
function limited(pair: Pair, image: Pair): Pair {
  const part = Math.min(1, TRUST / distance(pair, image))
  return [pair[0] + part * (image[0] - pair[0]), pair[1] + part * (image[1] - pair[1])]
}

/** Newton's step towards a pair that stays as it is; null where the slopes say that there is none that way. */
function newtonStep(pair: Pair, image: Pair, difference: number, map: (pair: Pair) => Pair): Pair | null {
  const miss: Pair = [image[0] - pair[0], image[1] - pair[1]]
  const first = map([pair[0] + difference, pair[1]])
  const second = map([pair[0], pair[1] + difference])
  const a = 1 - (first[0] - image[0]) / difference
  const b = -(second[0] - image[0]) / difference
  const c = -(first[1] - image[1]) / difference
  const d = 1 - (second[1] - image[1]) / difference
  const determinant = a * d - b * c
  // A map that amplifies has no pair ahead that it would come to.
  if (!(a > 0 && d > 0 && determinant > 0)) return null
  const step: Pair = [(d * miss[0] - b * miss[1]) / determinant, (a * miss[1] - c * miss[0]) / determinant]
  return distance(step, [0, 0]) <= TRUST ? step : null
}
