/**
 * The machine drawn from above, turning by the same turns as the 3D picture: in its place where there is none, and
 * pale while it is loading.
 */
import { type CSSProperties, type RefObject, useEffect, useMemo, useRef } from 'react'
import { useStore } from 'zustand'
import { wormFraction } from '../../sim/drive/turns.ts'
import { handSign } from '../../sim/gear/wheel-motion.ts'
import { type Layout, machineLayout } from '../../sim/pose/layout.ts'
import { leftWheelAngle, rightWheelAngle, wormAngle } from '../../sim/pose/pose.ts'
import { type Frame } from '../frame/frame-state.ts'
import { runFrame } from '../frame/frame.ts'
import { useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { PlanDrawing, leftOut, planBox } from './PlanDrawing.tsx'
import { type ThreadOutline, threadShift } from './plan-shapes.ts'
import './plan.css'

const DEGREES = 180 / Math.PI

const threadOf = ({ gears, starts }: Layout, axialModule: number, hand: 1 | -1): ThreadOutline => ({
  starts,
  hand,
  axialModule,
  rootRadius: gears.rootRadiusWorm,
  tipRadius: gears.tipRadiusWorm,
  axialPressureAngle: gears.axialPressureAngle,
  length: gears.threadLength,
})

/** The transforms of the parts that turn, each once in the drawing. */
function transformsIn(drawing: Element) {
  const of = (name: string) => drawing.querySelector<SVGGraphicsElement>(`[data-turns='${name}']`)!
  const first = (name: string) => of(name).transform.baseVal.getItem(0)
  return {
    left: first('left'),
    right: first('right'),
    thread: first('thread'),
    mark: of('worm'),
    markPlace: first('worm'),
    markWidth: of('worm').transform.baseVal.getItem(1),
  }
}

function usePlanPainter(element: RefObject<HTMLElement | null>, layout: Layout, thread: ThreadOutline): void {
  const { frame } = useWorkshop()
  useEffect(() => {
    if (!element.current) return undefined
    const { left, right, thread: threads, mark, markPlace, markWidth } = transformsIn(element.current)
    const painter = () => {
      const { turns } = frame.state
      left.setRotate(-leftWheelAngle(layout, turns, frame.play) * DEGREES, 0, 0)
      right.setRotate(-rightWheelAngle(layout, turns, frame.play) * DEGREES, 0, 0)
      threads.setTranslate(0, threadShift(thread, wormFraction(turns)))
      const worm = wormAngle(turns)
      const facing = Math.cos(worm)
      markPlace.setTranslate(-layout.shaft.collarRadius * Math.sin(worm), 0)
      markWidth.setScale(Math.max(0.02, facing), 1)
      const visibility = facing > 0 ? 'visible' : 'hidden'
      if (mark.style.visibility !== visibility) mark.style.visibility = visibility
    }
    frame.painters.add(painter)
    painter()
    return () => void frame.painters.delete(painter)
  }, [element, frame, layout, thread])
}

/** Moves the frame on while something turns, as there is no 3D picture that would. */
function usePlanLoop(frame: Frame, turning: boolean): void {
  useEffect(() => {
    if (!turning) return undefined
    let last = performance.now()
    let request = requestAnimationFrame(function next(now) {
      runFrame(frame, Math.max(0, now - last) / 1000)
      last = now
      request = requestAnimationFrame(next)
    })
    return () => cancelAnimationFrame(request)
  }, [frame, turning])
}

const NOTICES = {
  no: null,
  chosen: null,
  'no-webgl': 'This device shows no 3D picture. The drawn view turns with the same counts.',
  lost: 'The 3D picture was lost. The drawn view turns with the same counts.',
} as const

interface NameProps {
  readonly x: number
  readonly y: number
  readonly name: string
}

/** Names stand beside the drawing and not in it, so that their letters keep their size. */
const PlanName = ({ x, y, name }: NameProps) => (
  <span className="plan-name" style={{ left: `${100 * x}%`, top: `${100 * y}%` }}>
    {name}
  </span>
)

function PlanNames({ layout }: { readonly layout: Layout }) {
  const box = planBox(layout)
  const { gears, shaft, motor } = layout
  const motorMiddle = motor ? 0.55 * motor.front + 0.45 * (motor.back + leftOut(layout)) : 0
  const side = gears.centreDistance / box.width
  const below = (z: number) => (z - box.top + 0.24 * gears.referenceRadiusWheel) / box.height
  return (
    <>
      <PlanName x={0.5 - side} y={below(gears.outsideRadiusWheel)} name="Left wheel" />
      <PlanName x={0.5 + side} y={below(gears.outsideRadiusWheel)} name="Right wheel" />
      <PlanName x={0.5} y={below(shaft.front)} name="Worm" />
      {motor && <PlanName x={0.5} y={(motorMiddle - box.top) / box.height} name="Motor" />}
    </>
  )
}

/** `ghost`: pale, while the 3D picture is on its way. */
export function PlanView({ ghost = false }: { readonly ghost?: boolean }) {
  const { frame, readout } = useWorkshop()
  const machine = useMachine((now) => now)
  const plan = useView((view) => view.plan)
  const turning = useStore(readout, (now) => now.motion !== 'still')
  const layout = useMemo(() => machineLayout(machine), [machine])
  const { axialModule, hand } = machine.gearing
  const thread = useMemo(() => threadOf(layout, axialModule, handSign(hand)), [layout, axialModule, hand])
  const drawing = useRef<HTMLDivElement>(null)
  usePlanPainter(drawing, layout, thread)
  usePlanLoop(frame, turning)
  const { width, height } = planBox(layout)
  const notice = NOTICES[plan]
  return (
    <div className="plan-view" data-ghost={ghost}>
      <div className="plan-room">
        <div
          className="plan-drawing"
          ref={drawing}
          role="img"
          aria-label={
            ghost
              ? 'The 3D picture is loading'
              : 'Plan view, seen from above: the worm between its two wheels'
          }
          style={{ '--ratio': width / height } as CSSProperties}
        >
          <PlanDrawing layout={layout} thread={thread} />
          {!ghost && <PlanNames layout={layout} />}
        </div>
      </div>
      {notice && (
        <p className="plan-notice" role="status">
          {notice}
        </p>
      )}
    </div>
  )
}
