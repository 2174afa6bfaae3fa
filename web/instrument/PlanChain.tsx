/** The electrical parts in the drawn view: boxes and the leads between them. */
import type { ElectricLayout, Point, Stand } from '../../sim/pose/electric-layout.ts'
import { standsIn } from '../../sim/pose/electric-layout.ts'
import type { Layout } from '../../sim/pose/layout.ts'
import type { PowerStop } from '../store/view.ts'
import { planBody } from './plan-shapes.ts'

interface PlanChainProps {
  readonly layout: Layout
  /** How much of the motor is left out; the row beside it is as much shorter. */
  readonly leftOut: number
  readonly lit: PowerStop | null
}

/** From the left to the right of everything that stands on the tray. */
export const chainHalfWidth = ({ electric }: Layout): number =>
  Math.max(0, ...standsIn(electric).map(({ stand }) => Math.abs(stand.x) + stand.width / 2))

export function PlanChain({ layout, leftOut, lit }: PlanChainProps) {
  const { electric, motor } = layout
  if (!electric || !motor) return null
  const shorter = 1 - leftOut / (motor.front - motor.back)
  const place = (z: number) => motor.front + shorter * (z - motor.front)
  return (
    <>
      {electric.wires.map((wire, at) => (
        <path key={at} className="plan-thin" d={wirePath(wire.points, electric, place)} />
      ))}
      {electric.plug && <Inlet electric={electric} place={place} lit={lit} />}
      {standsIn(electric).map(({ part, stand }) => {
        const stop = part === 'battery' ? 'socket' : part
        return <Box key={part} stand={stand} place={place} className={planBody(lit, stop)} />
      })}
    </>
  )
}

type Place = (z: number) => number

/** Without what lies on the floor or behind the machine. */
function insideCase(points: readonly Point[], { top }: ElectricLayout): readonly Point[] {
  const from = points.findIndex(([, y]) => y > top)
  return from < 1 ? points : points.slice(points.findLastIndex(([, y]) => y < top) + 1)
}

const wirePath = (points: readonly Point[], electric: ElectricLayout, place: Place): string =>
  `M${insideCase(points, electric)
    .map(([x, , z]) => `${x.toFixed(2)} ${place(z).toFixed(2)}`)
    .join('L')}`

/** Where the mains lead comes in */
function Inlet({ electric, place, lit }: Omit<PlanChainProps, 'layout' | 'leftOut'> & InletProps) {
  const [x, , z] = insideCase(electric.wires[0]!.points, electric)[0]!
  const size = 5 * electric.wireRadius
  return <circle className={planBody(lit, 'socket')} cx={x} cy={place(z)} r={size / 2} />
}

interface InletProps {
  readonly electric: ElectricLayout
  readonly place: Place
}

function Box({
  stand,
  place,
  className,
}: {
  readonly stand: Stand
  readonly place: Place
  readonly className: string
}) {
  const { x, z, width, length } = stand
  const back = place(z - length / 2)
  return (
    <rect
      className={className}
      x={x - width / 2}
      y={back}
      width={width}
      height={place(z + length / 2) - back}
    />
  )
}
