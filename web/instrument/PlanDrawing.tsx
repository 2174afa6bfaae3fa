/** The machine drawn from above, at zero turns. The parts that turn carry a name in data-turns, for the painter. */
import { farSidePhase } from '../../sim/gear/wheel-motion.ts'
import type { Layout } from '../../sim/pose/layout.ts'
import { useView } from '../frame/workshop.ts'
import type { PowerStop } from '../store/view.ts'
import { PlanChain, chainHalfWidth } from './PlanChain.tsx'
import { type ThreadOutline, planBody, threadPaths, wheelPath } from './plan-shapes.ts'

export interface PlanBox {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

/** A motor longer than this many radii is drawn shorter, with a break, so that the gears stay large. */
const LONGEST_MOTOR = 1.8

/** How much of the motor is left out; what stands behind it comes forward by as much. */
export const leftOut = ({ motor }: Layout): number =>
  motor ? Math.max(0, motor.front - motor.back - LONGEST_MOTOR * motor.radius) : 0

/** Everything drawn, with room for pointers and their names below. */
export function planBox(layout: Layout): PlanBox {
  const { gears, shaft, fan, crank } = layout
  const radius = gears.outsideRadiusWheel
  const half = Math.max(gears.centreDistance + radius, chainHalfWidth(layout)) + 0.06 * radius
  const behind = Math.min(shaft.back, fan ? fan.z - fan.depth : 0, crank ? crank.z - 0.2 * radius : 0)
  const top = behind + leftOut(layout) - 0.06 * radius
  const bottom = Math.max(radius, shaft.front) + 0.55 * radius
  return { left: -half, top, width: 2 * half, height: bottom - top }
}

interface WheelProps {
  readonly layout: Layout
  readonly thread: ThreadOutline
  readonly side: 'left' | 'right'
  readonly lit: PowerStop | null
}

function Wheel({ layout, thread, side, lit }: WheelProps) {
  const { gears, output, teeth } = layout
  const r = gears.referenceRadiusWheel
  const outline = wheelPath({
    ...thread,
    teeth,
    rootRadius: gears.rootRadiusWheel,
    tipRadius: gears.throatRadiusWheel,
  })
  const phase = side === 'left' ? (-180 / Math.PI) * farSidePhase(layout.starts, teeth) : 0
  const long = 0.34 * r
  const inner = 0.58 * r
  return (
    <g transform={`translate(${side === 'left' ? -gears.centreDistance : gears.centreDistance} 0)`}>
      <g data-turns={side} transform="rotate(0)">
        <path className={planBody(lit, 'wheels')} d={outline} transform={`rotate(${phase})`} />
        <circle className="plan-thin plan-axis" r={r} />
        <circle className="plan-thin" r={0.26 * r} />
        {side === 'left' ? (
          <>
            <rect className="plan-mark-left" x={-0.13 * r} y={inner} width={0.1 * r} height={long} />
            <rect className="plan-mark-left" x={0.03 * r} y={inner} width={0.1 * r} height={long} />
          </>
        ) : (
          <circle className="plan-mark-right" cy={0.76 * r} r={0.13 * r} />
        )}
      </g>
      <circle className={planBody(lit, 'outputs')} r={output.shaftRadius} />
      <Pointer y={gears.outsideRadiusWheel + 0.05 * r} size={0.1 * r} />
    </g>
  )
}

const Pointer = ({ y, size }: { readonly y: number; readonly size: number }) => (
  <path className="plan-pointer" d={`M0 ${y}l${size} ${1.5 * size}h${-2 * size}z`} />
)

function Bearing({ layout, z }: { readonly layout: Layout; readonly z: number }) {
  const { radius, bearingRadius, bearingWidth: width } = layout.shaft
  const high = bearingRadius - radius
  return [-bearingRadius, radius].map((x) => (
    <path
      key={x}
      className="plan-body"
      d={`M${x} ${z - width / 2}h${high}v${width}h${-high}zl${high} ${width}m0 ${-width}l${-high} ${width}`}
    />
  ))
}

function Worm({ layout, thread, lit }: Omit<WheelProps, 'side'>) {
  const { shaft, gears } = layout
  const { rootRadius: root, length } = thread
  const dash = 0.16 * gears.tipRadiusWorm
  return (
    <>
      <rect
        className="plan-body"
        x={-shaft.radius}
        y={shaft.back + leftOut(layout)}
        width={2 * shaft.radius}
        height={shaft.front - shaft.back - leftOut(layout)}
      />
      <clipPath id="plan-worm">
        <rect x={-2 * gears.tipRadiusWorm} y={-length / 2} width={4 * gears.tipRadiusWorm} height={length} />
      </clipPath>
      <rect className={planBody(lit, 'worm')} x={-root} y={-length / 2} width={2 * root} height={length} />
      <g clipPath="url(#plan-worm)">
        <path
          className={planBody(lit, 'worm')}
          data-turns="thread"
          transform="translate(0 0)"
          d={threadPaths(thread)}
        />
      </g>
      <rect
        className="plan-body"
        x={-shaft.collarRadius}
        y={shaft.collar}
        width={2 * shaft.collarRadius}
        height={shaft.collarWidth}
      />
      <g data-turns="worm" transform="translate(0 0) scale(1 1)">
        <rect
          className="plan-mark-worm"
          x={-dash}
          y={shaft.collar}
          width={2 * dash}
          height={shaft.collarWidth}
        />
      </g>
      <Pointer y={shaft.front + 0.12 * gears.tipRadiusWorm} size={0.1 * gears.referenceRadiusWheel} />
    </>
  )
}

function Motor({ layout, lit }: Pick<WheelProps, 'layout' | 'lit'>) {
  const { motor, fan, crank, shaft } = layout
  const cut = leftOut(layout)
  const fanBack = fan ? fan.z - fan.depth / 2 + cut : 0
  return (
    <>
      {motor && (
        <MotorCan
          className={planBody(lit, 'brushes', 'commutator', 'armature')}
          radius={motor.radius}
          front={motor.front}
          back={motor.back + cut}
          wall={2 * motor.wall}
        />
      )}
      {motor && cut > 0 && <Break radius={motor.radius} z={motor.back + cut + 0.45 * motor.radius} />}
      {fan && (
        <rect
          className={planBody(lit, 'fan')}
          x={-fan.radius}
          y={fanBack}
          width={2 * fan.radius}
          height={fan.depth}
        />
      )}
      {crank && (
        <rect
          className={planBody(lit, 'socket')}
          x={-2 * shaft.radius}
          y={crank.z - shaft.radius}
          width={crank.arm + 2 * shaft.radius}
          height={2 * shaft.radius}
        />
      )}
    </>
  )
}

interface MotorCanProps {
  readonly className: string
  readonly radius: number
  readonly front: number
  readonly back: number
  readonly wall: number
}

const MotorCan = ({ className, radius, front, back, wall }: MotorCanProps) => (
  <path
    className={className}
    d={`M${-radius} ${back}h${2 * radius}V${front}h${-2 * radius}z
      m0 ${wall}h${2 * radius}M${-radius} ${front - wall}h${2 * radius}`}
  />
)

/** Two broken lines right across: a piece is left out here. */
function Break({ radius, z }: { readonly radius: number; readonly z: number }) {
  const w = 1.2 * radius
  const d = 0.12 * radius
  const line = (y: number) =>
    `M${-w} ${y}h${0.9 * w}l${0.05 * w} ${-d}l${0.1 * w} ${2 * d}l${0.05 * w} ${-d}h${0.9 * w}`
  return (
    <>
      <rect className="plan-gap" x={-w} y={z - d / 2} width={2 * w} height={d} />
      <path className="plan-thin" d={line(z - d / 2) + line(z + d / 2)} />
    </>
  )
}

interface PlanDrawingProps {
  readonly layout: Layout
  readonly thread: ThreadOutline
}

export function PlanDrawing({ layout, thread }: PlanDrawingProps) {
  const { left, top, width, height } = planBox(layout)
  const { shaft } = layout
  const lit = useView((view) => view.lit)
  return (
    <svg className="plan-svg" viewBox={`${left} ${top} ${width} ${height}`} aria-hidden="true">
      <Wheel layout={layout} thread={thread} side="left" lit={lit} />
      <Wheel layout={layout} thread={thread} side="right" lit={lit} />
      <Worm layout={layout} thread={thread} lit={lit} />
      <Bearing layout={layout} z={shaft.frontBearing} />
      <Bearing layout={layout} z={shaft.rearBearing} />
      <PlanChain layout={layout} leftOut={leftOut(layout)} lit={lit} />
      <Motor layout={layout} lit={lit} />
      <path className="plan-thin plan-axis" d={`M0 ${top}V${shaft.front}`} />
    </svg>
  )
}
