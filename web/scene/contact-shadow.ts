/** A soft dark patch under the machine, for pictures without a shadow map. */
import { DataTexture, LinearFilter, RGBAFormat } from 'three'

const SIZE = 64

/** Dark in the middle and soft towards the edge, like light kept off by a raised rounded plate. */
export function contactShadowTexture(): DataTexture {
  const pixels = new Uint8Array(SIZE * SIZE * 4)
  for (let row = 0; row < SIZE; row++) {
    for (let column = 0; column < SIZE; column++) {
      const x = Math.abs(((column + 0.5) / SIZE) * 2 - 1)
      const y = Math.abs(((row + 0.5) / SIZE) * 2 - 1)
      const away = (x ** 3 + y ** 3) ** (1 / 3)
      const light = Math.min(1, Math.max(0, (1 - away) / 0.72))
      pixels[(row * SIZE + column) * 4 + 3] = 255 * light * light * (3 - 2 * light)
    }
  }
  const texture = new DataTexture(pixels, SIZE, SIZE, RGBAFormat)
  texture.magFilter = texture.minFilter = LinearFilter
  texture.needsUpdate = true
  return texture
}
