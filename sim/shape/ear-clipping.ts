/**
 * Cuts a flat polygon, given counter-clockwise, into triangles by clipping ears: triples of corner numbers.
 * Always gives corners - 2 triangles, so that a surface built from them stays closed even if the polygon
 * touches itself.
 */
export function polygonTriangles(u: ArrayLike<number>, v: ArrayLike<number>): Uint32Array {
  const left = Array.from({ length: u.length }, (_, i) => i)
  const triangles = new Uint32Array(3 * Math.max(0, u.length - 2))
  for (let at = 0; at < triangles.length; at += 3) {
    const ear = bestEar(u, v, left)
    triangles[at] = left[(ear + left.length - 1) % left.length]!
    triangles[at + 1] = left[ear]!
    triangles[at + 2] = left[(ear + 1) % left.length]!
    left.splice(ear, 1)
  }
  return triangles
}

/**
 * Among the ears the one with the widest least angle, which keeps slivers away; else the first corner that
 * bulges.
 */
function bestEar(u: ArrayLike<number>, v: ArrayLike<number>, left: readonly number[]): number {
  const n = left.length
  let best = -1
  let bulge = 0
  let quality = 0
  for (let i = 0; i < n; i++) {
    const a = left[(i + n - 1) % n]!
    const b = left[i]!
    const c = left[(i + 1) % n]!
    const shape = triangleQuality(u, v, a, b, c)
    if (shape <= quality) continue
    if (best < 0) bulge = i
    if (!isEar(u, v, left, a, b, c)) continue
    best = i
    quality = shape
  }
  return best < 0 ? bulge : best
}

const turn = (u: ArrayLike<number>, v: ArrayLike<number>, a: number, b: number, c: number): number =>
  (u[b]! - u[a]!) * (v[c]! - v[a]!) - (u[c]! - u[a]!) * (v[b]! - v[a]!)

function triangleQuality(
  u: ArrayLike<number>,
  v: ArrayLike<number>,
  a: number,
  b: number,
  c: number,
): number {
  const side = (p: number, q: number) => (u[p]! - u[q]!) ** 2 + (v[p]! - v[q]!) ** 2
  return turn(u, v, a, b, c) / (side(a, b) + side(b, c) + side(c, a))
}

function isEar(
  u: ArrayLike<number>,
  v: ArrayLike<number>,
  left: readonly number[],
  a: number,
  b: number,
  c: number,
): boolean {
  for (const p of left) {
    if (p === a || p === b || p === c) continue
    if (turn(u, v, a, b, p) >= 0 && turn(u, v, b, c, p) >= 0 && turn(u, v, c, a, p) >= 0) return false
  }
  return true
}
