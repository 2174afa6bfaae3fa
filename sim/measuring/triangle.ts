/**
 * Brings the first columns of the rows to an upper triangle by Householder reflections, in place, and everything to
 * the right of them along. What stays below the triangle in the column after it is what no choice of unknowns
 * explains.
 */
export function triangulate(rows: number[][], columns: number): void {
  for (let column = 0; column < columns; column++) {
    const below = rows.slice(column)
    const length = Math.hypot(...below.map((row) => row[column]!))
    if (length === 0) continue
    const head = below[0]![column]!
    const target = head > 0 ? -length : length
    const mirror = below.map((row, k) => (k === 0 ? head - target : row[column]!))
    reflect(below, mirror, column)
  }
}

/** Reflects each column from the given one on in the plane that the mirror vector stands on. */
function reflect(rows: readonly number[][], mirror: readonly number[], from: number): void {
  const squared = mirror.reduce((sum, value) => sum + value * value, 0)
  for (let column = from; column < rows[0]!.length; column++) {
    let along = 0
    rows.forEach((row, k) => (along += mirror[k]! * row[column]!))
    rows.forEach((row, k) => (row[column] = row[column]! - ((2 * along) / squared) * mirror[k]!))
  }
}
