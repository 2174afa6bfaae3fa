/** A small studio to be mirrored in the metals: pale walls, a dark floor and three soft boxes. */
import {
  DataTexture,
  EquirectangularReflectionMapping,
  FloatType,
  LinearFilter,
  LinearSRGBColorSpace,
  PMREMGenerator,
  RGBAFormat,
  type Texture,
  type WebGLRenderer,
} from 'three'

/** A bright panel: direction of its middle [deg], half width and half height [deg], radiance. */
interface SoftBox {
  readonly azimuth: number
  readonly elevation: number
  readonly halfWidth: number
  readonly halfHeight: number
  readonly light: readonly [number, number, number]
}

/** Azimuth 0 is towards the viewer (+z), 90 to the right (+x). */
const BOXES: readonly SoftBox[] = [
  { azimuth: -42, elevation: 52, halfWidth: 26, halfHeight: 17, light: [4.6, 4.4, 4.1] },
  { azimuth: 138, elevation: 24, halfWidth: 10, halfHeight: 34, light: [3.6, 4, 4.6] },
  { azimuth: 62, elevation: 30, halfWidth: 8, halfHeight: 26, light: [2.8, 2.9, 3] },
  { azimuth: -120, elevation: 40, halfWidth: 30, halfHeight: 8, light: [2.2, 2.2, 2.1] },
]

const WIDTH = 128
const HEIGHT = 64

const smooth = (t: number): number => {
  const u = Math.min(1, Math.max(0, t))
  return u * u * (3 - 2 * u)
}

/** 1 inside the box, falling to 0 over 5 degrees outside it. */
function cover(box: SoftBox, azimuth: number, elevation: number): number {
  const turn = ((((azimuth - box.azimuth + 180) % 360) + 360) % 360) - 180
  const across = Math.abs(turn) * Math.cos((elevation * Math.PI) / 180)
  const up = Math.abs(elevation - box.elevation)
  return smooth((box.halfWidth + 5 - across) / 5) * smooth((box.halfHeight + 5 - up) / 5)
}

/** Walls: bright above, a grey band at the horizon, a darker floor. */
const wall = (elevation: number): number =>
  elevation < 0 ? 0.16 + 0.2 * smooth((elevation + 50) / 50) : 0.36 + 0.26 * smooth(elevation / 80)

function studioTexture(): DataTexture {
  const pixels = new Float32Array(WIDTH * HEIGHT * 4)
  for (let row = 0; row < HEIGHT; row++) {
    const elevation = ((row + 0.5) / HEIGHT) * 180 - 90
    for (let column = 0; column < WIDTH; column++) {
      const direction = ((column + 0.5) / WIDTH) * 2 * Math.PI - Math.PI
      const azimuth = (Math.atan2(Math.cos(direction), Math.sin(direction)) * 180) / Math.PI
      const at = (row * WIDTH + column) * 4
      pixels.fill(wall(elevation), at, at + 3)
      for (const box of BOXES) {
        const share = cover(box, azimuth, elevation)
        for (let c = 0; c < 3; c++) pixels[at + c] = (pixels[at + c] ?? 0) * (1 - share) + share * (box.light[c] ?? 0)
      }
      pixels[at + 3] = 1
    }
  }
  const texture = new DataTexture(pixels, WIDTH, HEIGHT, RGBAFormat, FloatType)
  texture.mapping = EquirectangularReflectionMapping
  texture.colorSpace = LinearSRGBColorSpace
  texture.minFilter = texture.magFilter = LinearFilter
  texture.needsUpdate = true
  return texture
}

/** The caller disposes of the result. */
export function studioEnvironment(renderer: WebGLRenderer): { readonly texture: Texture; dispose(): void } {
  const source = studioTexture()
  const generator = new PMREMGenerator(renderer)
  const target = generator.fromEquirectangular(source)
  generator.dispose()
  source.dispose()
  return { texture: target.texture, dispose: () => target.dispose() }
}
