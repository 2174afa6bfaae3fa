/**
 * The plainest running three.js scene with as many triangles and draw calls as asked for in the address:
 * turning solids of equal size, one directional and one ambient light, one frame for each animation frame.
 */
import {
  AmbientLight,
  BufferGeometry,
  DirectionalLight,
  Float32BufferAttribute,
  Mesh,
  MeshStandardMaterial,
  PerspectiveCamera,
  Scene,
  WebGLRenderer,
} from 'three'

const asked = new URLSearchParams(location.search)
const number = (name: string, otherwise: number): number => Number(asked.get(name) ?? otherwise)
const width = number('width', 1280)
const height = number('height', 720)
const drawCalls = Math.max(1, number('drawCalls', 1))
const triangles = Math.max(drawCalls, number('triangles', 1))

/** A ribbon wound round a drum, with exactly `count` triangles. */
function ribbon(count: number): BufferGeometry {
  const points: number[] = []
  const corners: number[] = []
  for (let i = 0; i < count + 2; i++) {
    const angle = (i / count) * 12 * Math.PI
    points.push(Math.cos(angle), (i / count) * 2 - 1 + (i % 2) * 0.15, Math.sin(angle))
  }
  for (let i = 0; i < count; i++) corners.push(i, i + 1 + (i % 2), i + 2 - (i % 2))
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new Float32BufferAttribute(points, 3))
  geometry.setIndex(corners)
  geometry.computeVertexNormals()
  return geometry
}

const canvas = document.querySelector('canvas') ?? undefined
const antialias = number('antialias', 0) === 1
const renderer = new WebGLRenderer({ ...(canvas ? { canvas } : {}), antialias })
renderer.setPixelRatio(number('pixelRatio', 1))
renderer.setSize(width, height)
const scene = new Scene()
const camera = new PerspectiveCamera(35, width / height, 0.1, 100)
camera.position.set(0, 0, 18)
const light = new DirectionalLight(0xffffff, 2)
light.position.set(3, 5, 4)
scene.add(light, new AmbientLight(0xffffff, 0.6))

const meshes: Mesh[] = []
const across = Math.ceil(Math.sqrt(drawCalls))
for (let i = 0; i < drawCalls; i++) {
  const share = Math.floor(triangles / drawCalls) + (i < triangles % drawCalls ? 1 : 0)
  const mesh = new Mesh(ribbon(share), new MeshStandardMaterial({ color: 0x8899aa }))
  mesh.scale.setScalar(4 / across)
  mesh.position.set(((i % across) / across - 0.5) * 12, (Math.floor(i / across) / across - 0.5) * 8, 0)
  scene.add(mesh)
  meshes.push(mesh)
}

function draw(): void {
  for (const mesh of meshes) mesh.rotation.y += 0.02
  renderer.render(scene, camera)
}

function everyFrame(): void {
  requestAnimationFrame(everyFrame)
  draw()
}

draw()
everyFrame()
Object.assign(window, {
  counterturn: {
    ready: Promise.resolve(),
    draw,
    renderInfo: () => ({
      triangles: renderer.info.render.triangles,
      drawCalls: renderer.info.render.calls,
    }),
  },
})
