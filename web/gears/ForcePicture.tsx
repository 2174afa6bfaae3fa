/** The worm from above with everything that pushes it: arrows that meet cancel, arrows along it add. */
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { handSign } from '../../sim/gear/wheel-motion.ts'
import type { Vector } from '../../sim/gear/mesh-forces.ts'
import { quantityText } from '../instrument/reading-text.ts'
import type { WormForces } from './forces.ts'

const WIDTH = 312
const HEIGHT = 264
const MIDDLE = WIDTH / 2
/** Half the worm, and the length of the largest arrow [px] */
const HALF = 24
const LONGEST = 62
const SHORTEST = 7
const HEAD = 9
/** How far below its bearing the arrow of a thrust reaches [px] */
const BEYOND = 26
/** Less than this across a bearing is rounding [N] */
const NEGLIGIBLE = 1e-6
/** Room above and below for the places of the bearings */
const MARGIN = 40

interface ArrowProps {
  readonly x: number
  readonly y: number
  readonly dx: number
  readonly dy: number
  readonly of: 'left' | 'right' | 'bearing'
}

/** From its tail; too short for a head it is left out. */
function Arrow({ x, y, dx, dy, of }: ArrowProps) {
  const length = Math.hypot(dx, dy)
  if (length < SHORTEST) return null
  const [ux, uy] = [dx / length, dy / length]
  const [ex, ey] = [x + dx, y + dy]
  const [bx, by] = [ex - HEAD * ux, ey - HEAD * uy]
  const half = 0.55 * HEAD
  return (
    <g className="force-arrow" data-of={of}>
      <path className="force-keyline" d={`M${x} ${y}L${bx} ${by}`} />
      <path d={`M${x} ${y}L${bx} ${by}`} />
      <path
        className="force-head"
        d={`M${ex} ${ey}L${bx - half * uy} ${by + half * ux}L${bx + half * uy} ${by - half * ux}Z`}
      />
    </g>
  )
}

/** Towards the eye a point in a ring, away from it a cross. */
function Facing({
  x,
  y,
  up,
  of,
}: {
  readonly x: number
  readonly y: number
  readonly up: boolean
  readonly of: 'left' | 'right'
}) {
  const d = 3.6
  return (
    <g className="force-facing" data-of={of}>
      <circle cx={x} cy={y} r="8" />
      {up ? (
        <circle className="force-point" cx={x} cy={y} r="2.4" />
      ) : (
        <path d={`M${x - d} ${y - d}L${x + d} ${y + d}M${x + d} ${y - d}L${x - d} ${y + d}`} />
      )}
    </g>
  )
}

const Text = ({
  x,
  y,
  at,
  children,
}: {
  readonly x: number
  readonly y: number
  readonly at: 'start' | 'middle' | 'end'
  readonly children: string
}) => (
  <text x={x} y={y} textAnchor={at}>
    {children}
  </text>
)

/** What one mesh does, at its pitch point. */
function Mesh({
  side,
  force,
  y,
  scale,
}: {
  readonly side: 'left' | 'right'
  readonly force: Vector
  readonly y: number
  readonly scale: number
}) {
  const way = side === 'right' ? 1 : -1
  const edge = MIDDLE + way * HALF
  const sideways = force[0] * scale
  const along = force[2] * scale
  const beside = edge + way * 16
  if (along === 0) return null
  return (
    <>
      <Arrow x={edge - sideways} y={y} dx={sideways} dy={0} of={side} />
      <Arrow x={beside} y={y + Math.sign(along) * 14} dx={0} dy={along} of={side} />
      <Facing x={beside} y={y - Math.sign(along) * 22} up={force[1] > 0} of={side} />
      <Text x={edge + way * (Math.abs(sideways) + 8)} y={y + 5} at={side === 'right' ? 'start' : 'end'}>
        {quantityText(Math.abs(force[0]), 'N')}
      </Text>
      <Text x={beside + way * 12} y={y + Math.sign(along) * 44 + 5} at={side === 'right' ? 'start' : 'end'}>
        {quantityText(Math.abs(force[2]), 'N')}
      </Text>
      <Text x={beside + way * 13} y={y - Math.sign(along) * 22 + 5} at={side === 'right' ? 'start' : 'end'}>
        {quantityText(Math.abs(force[1]), 'N')}
      </Text>
    </>
  )
}

function Bearing({
  y,
  force,
  scale,
  name,
}: {
  readonly y: number
  readonly force: Vector
  readonly scale: number
  readonly name: string
}) {
  const sideways = force[0] * scale
  const along = force[2] * scale
  const across = Math.hypot(force[0], force[1])
  return (
    <>
      {[-1, 1].map((way) => {
        const x = MIDDLE + way * (HALF - 4)
        return (
          <path key={way} className="force-bearing" d={`M${x - 8} ${y - 8}h16v16h-16zl16 16m0 -16l-16 16`} />
        )
      })}
      <Arrow x={MIDDLE - sideways / 2} y={y} dx={sideways} dy={0} of="bearing" />
      <Arrow x={MIDDLE} y={y + BEYOND - Math.max(along, 0)} dx={0} dy={along} of="bearing" />
      <Text x={8} y={y + 5} at="start">
        {across > NEGLIGIBLE ? `${name}, ${quantityText(across, 'N')} across` : name}
      </Text>
      {along !== 0 && (
        <Text x={WIDTH - 8} y={y + 5} at="end">
          {`${quantityText(Math.abs(force[2]), 'N')} along`}
        </Text>
      )}
    </>
  )
}

interface ForcePictureProps {
  readonly forces: WormForces
  readonly hand: GearNumbers['hand']
}

export function ForcePicture({ forces, hand }: ForcePictureProps) {
  const { mesh, bearings, at } = forces
  const { onWormFromRight: right, onWormFromLeft: left } = mesh
  const last = Math.max(at.front, 0)
  const scaleZ = (HEIGHT - 2 * MARGIN) / (last - at.rear)
  const toY = (z: number) => MARGIN + (z - at.rear) * scaleZ
  const largest = Math.max(...right.map(Math.abs), ...left.map(Math.abs), Math.abs(bearings.A[2]) / 2)
  const scale = largest > 0 ? LONGEST / largest : 0
  const y = toY(0)
  const overhung = at.front < 0
  // From above the threads of a right-hand worm lie like the stroke of a Z.
  const rise = 4 * handSign(hand)
  return (
    <svg
      className="force-picture"
      viewBox={`0 0 ${WIDTH} ${HEIGHT + (overhung ? 56 : 0)}`}
      role="img"
      aria-label={pictureWords(forces)}
    >
      <path className="force-axis" d={`M${MIDDLE} 4V${HEIGHT + (overhung ? 50 : -4)}`} />
      <rect
        className="force-shaft"
        x={MIDDLE - 10}
        y={toY(at.rear) - 22}
        width="20"
        height={y - toY(at.rear) + (overhung ? 22 : toY(at.front) - y + 44)}
      />
      <g className="force-worm">
        <rect x={MIDDLE - HALF} y={y - 40} width={2 * HALF} height="80" />
        {[-30, -10, 10, 30].map((dy) => (
          <path key={dy} d={`M${MIDDLE - HALF} ${y + dy + rise}L${MIDDLE + HALF} ${y + dy - rise}`} />
        ))}
      </g>
      <Bearing y={toY(at.front)} force={bearings.A} scale={scale} name="A" />
      <Bearing y={toY(at.rear)} force={bearings.B} scale={scale} name="B" />
      <Mesh side="right" force={right} y={y} scale={scale} />
      <Mesh side="left" force={left} y={y} scale={scale} />
    </svg>
  )
}

function pictureWords({ mesh }: WormForces): string {
  const newtons = (value: number) => quantityText(Math.abs(value), 'N')
  const { onWormFromRight: right, onWormFromLeft: left } = mesh
  const way = mesh.wormForce[2] < 0 ? 'back' : 'front'
  return `Worm from above. The right mesh pushes it to the left with ${newtons(right[0])}, the left mesh to the right with ${newtons(left[0])}. Along its axis they push it to the ${way} with ${newtons(right[2])} and ${newtons(left[2])}.`
}
