/** Both outputs from above, turning with the machine, and the space that both sweep through. */
import { useEffect, useId, useRef } from 'react'
import { useWorkshop } from '../frame/workshop.ts'
import { Hatch } from './Hatch.tsx'
import { leftRowAngle, rightRowAngle } from './row-angles.ts'
import { overlapZone } from '../../sim/pose/swept-overlap.ts'
import type { Timing } from './use-timing.ts'

const DEGREES = 180 / Math.PI

interface OutputProps {
  readonly timing: Timing
  readonly side: 'left' | 'right'
}

/** The first row lies along +x, so that turning by an angle of the picture puts it there. */
function Output({ timing, side }: OutputProps) {
  const { count, hubRadius, sweepRadius } = timing.pair.rows
  const { tuftThickness } = timing.layout.output
  const size = 0.5 * hubRadius
  return (
    <>
      <circle className="timing-sweep" r={sweepRadius} />
      <g data-turns={side} transform="rotate(0)">
        {Array.from({ length: count }, (_, row) => (
          <rect
            key={row}
            className="timing-row"
            x={0.8 * hubRadius}
            y={-tuftThickness / 2}
            width={sweepRadius - 0.8 * hubRadius}
            height={tuftThickness}
            rx={Math.min(0.3 * tuftThickness, 1)}
            transform={`rotate(${(360 * row) / count})`}
          />
        ))}
      </g>
      <circle className="timing-hub" r={hubRadius} />
      {side === 'right' ? (
        <circle className="timing-right" r={0.9 * size} />
      ) : (
        [-0.75, 0.15].map((x) => (
          <rect key={x} className="timing-left" x={x * size} y={-size} width={0.6 * size} height={2 * size} />
        ))
      )}
    </>
  )
}

interface RowsPictureProps {
  readonly timing: Timing
  /** The left output is drawn out sideways, as it comes off. */
  readonly out: boolean
  /** Tooth at which the left wheel is held */
  readonly tooth: number
}

export function RowsPicture({ timing, out, tooth }: RowsPictureProps) {
  const { frame } = useWorkshop()
  const picture = useRef<SVGSVGElement>(null)
  const hatch = useId()
  const { layout, pair, chosen } = timing
  const { centreDistance: a, sweepRadius } = pair.rows
  const zone = overlapZone(pair)
  const further = (360 * (tooth - chosen.toothOffset)) / pair.teeth
  useEffect(() => {
    const turner = (side: 'left' | 'right') =>
      picture.current?.querySelector<SVGGElement>(`[data-turns='${side}']`)?.transform.baseVal.getItem(0)
    const [left, right] = [turner('left'), turner('right')]
    const painter = () => {
      const { turns } = frame.state
      // a right row at u points to -x turned on; down the picture is towards the viewer
      right?.setRotate(180 - rightRowAngle(layout, turns, frame.play) * DEGREES, 0, 0)
      left?.setRotate(leftRowAngle(layout, turns, frame.play) * DEGREES - further, 0, 0)
    }
    frame.painters.add(painter)
    painter()
    return () => void frame.painters.delete(painter)
  }, [frame, layout, further])
  const away = out ? 0.7 * a : 0
  const half = a + sweepRadius + 1
  return (
    <svg
      ref={picture}
      className="timing-rows"
      viewBox={`${-half - away} ${-sweepRadius - 1} ${2 * half + away} ${2 * sweepRadius + 2}`}
      role="img"
      aria-label={
        out
          ? 'The left output is out, beside its place'
          : 'The two outputs from above, turning as the machine does'
      }
    >
      <defs>
        <Hatch id={hatch} size={2.4} />
      </defs>
      {zone && !out && (
        <path
          className="timing-zone"
          fill={chosen.clear ? undefined : `url(#${hatch})`}
          d={`M${zone.map(([x, z]) => `${x} ${z}`).join('L')}Z`}
        />
      )}
      {out && <circle className="timing-sweep" cx={-a} r={sweepRadius} />}
      <g transform={`translate(${a} 0)`}>
        <Output timing={timing} side="right" />
      </g>
      <g transform={`translate(${-a - away} 0)`}>
        <Output timing={timing} side="left" />
      </g>
    </svg>
  )
}
