/** Bodies by their foot. */
import type { BufferGeometry } from 'three'
import { placed } from '../solid.ts'

/** A body about its middle, stood up on `y`. */
export const standing = (height: number, body: BufferGeometry, y = 0): BufferGeometry =>
  placed(body, { y: y + height / 2 })
