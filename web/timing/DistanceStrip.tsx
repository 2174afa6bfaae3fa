/** The least distance while the outputs turn through one row pitch, with what is needed and where they are now. */
import { useEffect, useId, useMemo, useRef } from 'react'
import { clearanceAt, rowPitch } from '../../sim/gear/row-clearance.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { Hatch } from './Hatch.tsx'
import { rightRowAngle } from './row-angles.ts'
import { angleText, distanceText } from './timing-words.ts'
import type { Timing } from './use-timing.ts'

const WIDTH = 304
const [TOP, BOTTOM, LEFT] = [10, 98, 38]
const POINTS = 180

/** Height of the picture [mm]: a little more than is ever reached, and not less than twice the need. */
function scaleOf(distances: Float64Array, need: number): number {
  const most = distances.reduce((highest, distance) => Math.max(highest, distance), 2 * need)
  return 1.08 * most
}

export function DistanceStrip({ timing }: { readonly timing: Timing }) {
  const { frame } = useWorkshop()
  const { layout, pair, chosen } = timing
  const hatch = useId()
  const cursor = useRef<SVGPathElement>(null)
  const { rows, need } = pair
  const pitch = rowPitch(rows.count)
  const distances = useMemo(
    () =>
      Float64Array.from({ length: POINTS + 1 }, (_, n) =>
        // the wheels of a right-hand worm that turns about +z let u fall
        clearanceAt(rows, -pair.handSign * (n / POINTS) * rowPitch(rows.count), chosen.offset),
      ),
    [rows, pair.handSign, chosen.offset],
  )
  const most = scaleOf(distances, need)
  const x = (part: number) => LEFT + part * (WIDTH - LEFT - 1)
  const y = (distance: number) => BOTTOM - (distance / most) * (BOTTOM - TOP)
  const points = Array.from(
    distances,
    (distance, n) => `${x(n / POINTS).toFixed(1)} ${y(distance).toFixed(1)}`,
  )
  useEffect(() => {
    const painter = () => {
      const turned = (-pair.handSign * rightRowAngle(layout, frame.state.turns)) / pitch
      const part = turned - Math.floor(turned)
      cursor.current?.setAttribute('transform', `translate(${(part * (WIDTH - LEFT - 1)).toFixed(1)} 0)`)
    }
    frame.painters.add(painter)
    painter()
    return () => void frame.painters.delete(painter)
  }, [frame, layout, pair, pitch])
  return (
    <svg
      className="timing-strip"
      viewBox={`0 0 ${WIDTH} 120`}
      role="img"
      aria-label={`Distance over ${angleText(pitch)} of the wheels: least ${distanceText(chosen.distance)}, needed ${distanceText(need)}`}
    >
      <defs>
        <Hatch id={hatch} />
      </defs>
      <rect x={LEFT} y={y(need)} width={WIDTH - LEFT - 1} height={BOTTOM - y(need)} fill={`url(#${hatch})`} />
      <path className="timing-thin" d={`M${LEFT} ${y(need)}H${WIDTH - 1}`} />
      <path className="timing-line" d={`M${LEFT} ${TOP}V${BOTTOM}H${WIDTH - 1}`} />
      <path className="timing-curve" d={`M${points.join('L')}`} />
      <path ref={cursor} className="timing-cursor" d={`M${LEFT} ${BOTTOM}V${TOP}l-5 -8h10l-5 8`} />
      <text x={LEFT - 5} y={y(need) + 5} textAnchor="end">
        {need.toFixed(1)}
      </text>
      <text x={LEFT - 8} y={TOP + 5} textAnchor="end">
        mm
      </text>
      <text x={LEFT} y={BOTTOM + 17}>
        0°
      </text>
      <text x={WIDTH - 1} y={BOTTOM + 17} textAnchor="end">
        {angleText(pitch)}
      </text>
    </svg>
  )
}
