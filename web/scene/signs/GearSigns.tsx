/** What can be drawn over the gears to show how they work; fetched when the first of it is asked for. */
import { useCallback, useEffect, useLayoutEffect, useMemo } from 'react'
import type { MachineBodies } from '../machine-bodies.ts'
import type { Sign } from '../sign.ts'
import type { StageLoop } from '../stage-loop.ts'
import type { GearSignProps } from '../stage-props.ts'
import type { Theme } from '../../material/substances.ts'
import type { PartHeat } from '../../store/part-heat.ts'
import { usePatterns } from '../../shape-work/patterns.ts'
import { timingSign } from '../../../sim/pose/swept-overlap.ts'
import { coatMaterial, compoundSign } from './compound.ts'
import { contactPaint, contactSign } from './contact.ts'
import { arrowPaint } from './force-arrow.ts'
import { forceSign } from './forces.ts'
import { heatPaint } from './heat-paint.ts'
import { heatSign } from './heat.ts'
import { showsLines } from '../../store/shown-signs.ts'
import { sparkPaint, sparkSign } from './sparks.ts'
import { overlapPaint, overlapSign } from './timing.ts'

export interface GearSignsProps extends GearSignProps {
  readonly loop: StageLoop
  readonly bodies: MachineBodies
  readonly theme: Theme
  /** Asks for a picture. */
  readonly wake: () => void
}

export function GearSigns(props: GearSignsProps) {
  const { compound, forces, timing } = props.gearSigns
  return (
    <>
      {showsLines(props.gearSigns, props.misplaced) && <Contact {...props} />}
      {compound && <Compound {...props} />}
      {forces && <Forces {...props} />}
      {timing && <Timing {...props} />}
      {props.sparking > 0 && <Sparks {...props} />}
      {props.partHeat && <Heat {...props} partHeat={props.partHeat} />}
    </>
  )
}

/**
 * Paint that outlasts the signs it is used for: a program whose last material goes is compiled anew for the next one,
 * which takes far longer than all the rest of a step of a slider.
 */
function useKept<Paint extends { dispose(): void }>(make: () => Paint): Paint {
  const kept = useMemo(make, [make])
  useEffect(() => () => kept.dispose(), [kept])
  return kept
}

function Contact(props: GearSignsProps) {
  const { gearing } = props.bodies.machine
  const paint = useKept(contactPaint)
  return <SignObject {...props} sign={useMemo(() => contactSign(gearing, paint), [gearing, paint])} />
}

function Compound(props: GearSignsProps) {
  const { misplaced, sense } = props
  const { gearing } = props.bodies.machine
  const patterns = usePatterns(gearing, misplaced)
  const material = useKept(coatMaterial)
  const sign = useMemo(
    () => patterns && compoundSign(gearing, patterns, sense, material),
    [gearing, patterns, sense, material],
  )
  return sign && <SignObject {...props} sign={sign} />
}

function Forces(props: GearSignsProps) {
  const { loop, forceArrows, support } = props
  const { layout } = props.bodies
  const canvas = loop.renderer.domElement
  const paint = useKept(arrowPaint)
  const sign = useMemo(
    () => forceSign(layout, forceArrows, support, canvas, paint),
    [layout, forceArrows, support, canvas, paint],
  )
  return <SignObject {...props} sign={sign} />
}

function Timing(props: GearSignsProps) {
  const { bodies, theme } = props
  const paint = useKept(useCallback(() => overlapPaint(theme), [theme]))
  const sign = useMemo(() => {
    const overlap = timingSign(bodies.machine)
    return overlap && overlapSign(bodies.layout, overlap, paint)
  }, [bodies, paint])
  return sign && <SignObject {...props} sign={sign} />
}

function Sparks(props: GearSignsProps) {
  const { loop, bodies, sparking, wake } = props
  const canvas = loop.renderer.domElement
  const paint = useKept(sparkPaint)
  const { motor } = bodies.layout
  const sign = useMemo(() => motor && sparkSign(motor, paint, canvas), [motor, paint, canvas])
  useEffect(() => {
    sign?.setIndex(sparking)
    wake()
  }, [sign, sparking, wake])
  return sign && <SignObject {...props} sign={sign} />
}

function Heat(props: GearSignsProps & { readonly partHeat: PartHeat }) {
  const { loop, bodies, theme, partHeat, wake } = props
  const { materials } = loop
  const canvas = loop.renderer.domElement
  const paint = useKept(heatPaint)
  useLayoutEffect(() => {
    paint.setHeat(partHeat, theme)
    wake()
  }, [paint, partHeat, theme, wake])
  const [winding, body] = [Math.round(partHeat.winding), Math.round(partHeat.case)]
  // Its labels are elements of the page, so it is made only where it is sure to be let go again.
  useLayoutEffect(
    () => showSign(loop, heatSign(bodies.layout, { winding, case: body }, materials, paint, canvas), wake),
    [loop, bodies, winding, body, materials, paint, canvas, wake],
  )
  return null
}

function showSign(loop: StageLoop, sign: Sign, wake: () => void): () => void {
  loop.signs.push(sign)
  wake()
  return () => {
    loop.signs.splice(loop.signs.indexOf(sign), 1)
    sign.dispose()
    wake()
  }
}

function SignObject({ loop, wake, sign }: GearSignsProps & { readonly sign: Sign }) {
  useLayoutEffect(() => showSign(loop, sign, wake), [loop, sign, wake])
  return <primitive object={sign.object} />
}
