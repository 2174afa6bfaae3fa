import type { Manifold, ManifoldToplevel } from 'manifold-3d'

/** A band with an upper and a lower side, row beside row, swept through its columns. */
export interface Band {
  readonly rows: number
  readonly columns: number
  /** The last column goes on to the first. */
  readonly closed: boolean
  readonly point: (row: number, column: number, upper: boolean) => readonly [number, number, number]
}

/** The solid between the two sides of a band whose rows, columns and upper side make a left-handed frame. */
export function bandSolid({ Manifold: Solid, Mesh }: ManifoldToplevel, band: Band): Manifold {
  const { rows, columns, closed, point } = band
  const places: number[] = []
  for (const upper of [true, false]) {
    for (let j = 0; j < columns; j++) for (let i = 0; i < rows; i++) places.push(...point(i, j, upper))
  }
  const triangles: number[] = []
  const at = (i: number, j: number, upper: boolean) => (upper ? 0 : rows * columns) + (j % columns) * rows + i
  const quad = (a: number, b: number, c: number, d: number) => triangles.push(a, c, b, a, d, c)
  const last = rows - 1
  for (let j = 0; j < (closed ? columns : columns - 1); j++) {
    for (let i = 0; i < last; i++) {
      quad(at(i, j, true), at(i + 1, j, true), at(i + 1, j + 1, true), at(i, j + 1, true))
      quad(at(i, j, false), at(i, j + 1, false), at(i + 1, j + 1, false), at(i + 1, j, false))
    }
    quad(at(0, j, true), at(0, j + 1, true), at(0, j + 1, false), at(0, j, false))
    quad(at(last, j, true), at(last, j, false), at(last, j + 1, false), at(last, j + 1, true))
  }
  for (let i = 0; i < (closed ? 0 : last); i++) {
    const end = columns - 1
    quad(at(i, 0, true), at(i, 0, false), at(i + 1, 0, false), at(i + 1, 0, true))
    quad(at(i, end, true), at(i + 1, end, true), at(i + 1, end, false), at(i, end, false))
  }
  return new Solid(
    new Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(places),
      triVerts: Uint32Array.from(triangles),
    }),
  )
}
