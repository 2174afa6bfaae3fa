/** The plainest @react-three/fiber page: one lit box in a <Canvas>. */
import { Canvas, useFrame } from '@react-three/fiber'
import { createRoot } from 'react-dom/client'

let pictureIsUp = (): void => undefined
const ready = new Promise<void>((resolve) => {
  pictureIsUp = resolve
})

function FirstFrame() {
  useFrame(() => requestAnimationFrame(() => pictureIsUp()))
  return null
}

Object.assign(window, { counterturn: { ready } })
const root = document.getElementById('root')
if (!root) throw new Error('the page has no #root')
createRoot(root).render(
  <Canvas frameloop="demand">
    <ambientLight intensity={0.6} />
    <directionalLight position={[3, 5, 4]} intensity={2} />
    <mesh rotation={[0.4, 0.6, 0]}>
      <boxGeometry args={[2, 2, 2]} />
      <meshStandardMaterial color="#8899aa" />
    </mesh>
    <FirstFrame />
  </Canvas>,
)
