/** Half a circle for one row pitch: where the rows meet, which angles a tooth can give, and the angle now. */
import { useEffect, useId, useRef } from 'react'
import { rowPitch } from '../../sim/gear/row-clearance.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { Hatch } from './Hatch.tsx'
import { leftRowAngle, rightRowAngle } from './row-angles.ts'
import { angleText, headline, zonesText } from './timing-words.ts'
import type { Timing } from './use-timing.ts'

const WIDTH = 304
const HEIGHT = 162
const [X, Y] = [WIDTH / 2, 140]
const [INNER, OUTER] = [82, 108]

/** Place on the dial, part 0 at the left and 1 at the right. */
const place = (part: number, radius: number): string => {
  const angle = Math.PI * (1 - part)
  return `${(X + radius * Math.cos(angle)).toFixed(2)} ${(Y - radius * Math.sin(angle)).toFixed(2)}`
}

const sector = (from: number, to: number): string =>
  `M${place(from, OUTER)}A${OUTER} ${OUTER} 0 0 1 ${place(to, OUTER)}` +
  `L${place(to, INNER)}A${INNER} ${INNER} 0 0 0 ${place(from, INNER)}Z`

const tick = (part: number, from: number, to: number): string => `M${place(part, from)}L${place(part, to)}`

const LABELLED = [0, 0.25, 0.5, 0.75, 1]

export function Dial({ timing }: { readonly timing: Timing }) {
  const { pair, zones, phases, chosen } = timing
  const hatch = useId()
  const pitch = rowPitch(pair.rows.count)
  return (
    <svg
      className="timing-dial"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`The right output is ${angleText(chosen.offset)} ahead of the left one. ${headline(chosen, pair)}. ${zonesText(zones, pair)}`}
    >
      <defs>
        <Hatch id={hatch} />
      </defs>
      <path className="timing-clear" d={sector(0, 1)} />
      {zones.map(([from, to]) => (
        <path key={from} fill={`url(#${hatch})`} d={sector(from / pitch, to / pitch)} />
      ))}
      {zones.flat().map((edge) => (
        <path key={edge} className="timing-line" d={tick(edge / pitch, INNER, OUTER)} />
      ))}
      <path className="timing-outline" d={sector(0, 1)} />
      {phases.map(({ toothOffset, offset }) => (
        <path key={toothOffset} className="timing-line" d={tick(offset / pitch, OUTER, OUTER + 6)} />
      ))}
      {LABELLED.map((part) => (
        <Label key={part} part={part} text={angleText(part * pitch)} />
      ))}
      <Needle timing={timing} />
      <circle className="timing-pin" cx={X} cy={Y} r="5" />
    </svg>
  )
}

/** Beside its tick, or under the end of the band. */
function Label({ part, text }: { readonly part: number; readonly text: string }) {
  const atEnd = part === 0 || part === 1
  const [x, y] = place(part, atEnd ? (INNER + OUTER) / 2 : OUTER + 17).split(' ')
  const anchor = atEnd || part === 0.5 ? 'middle' : part < 0.5 ? 'end' : 'start'
  return (
    <text x={x} y={Number(y) + (atEnd ? 20 : 3)} textAnchor={anchor}>
      {text}
    </text>
  )
}

/** Painted with every frame, as the play of the wheels moves it a little. */
function Needle({ timing }: { readonly timing: Timing }) {
  const { frame } = useWorkshop()
  const needle = useRef<SVGPathElement>(null)
  const { layout, pair, chosen } = timing
  useEffect(() => {
    const pitch = rowPitch(pair.rows.count)
    const painter = () => {
      const { turns } = frame.state
      const offset = rightRowAngle(layout, turns, frame.play) - leftRowAngle(layout, turns, frame.play)
      // the chosen offset and what the play adds, so that the needle never jumps from one end to the other
      const off = offset - chosen.offset
      const part = (chosen.offset + off - pitch * Math.round(off / pitch)) / pitch
      needle.current?.setAttribute('transform', `rotate(${(180 * part).toFixed(2)} ${X} ${Y})`)
    }
    frame.painters.add(painter)
    painter()
    return () => void frame.painters.delete(painter)
  }, [frame, layout, pair, chosen])
  return <path ref={needle} className="timing-needle" d={`M${X} ${Y}H${X - OUTER + 6}`} />
}
