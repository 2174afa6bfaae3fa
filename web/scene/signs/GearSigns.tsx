/** What can be drawn over the gears to show how they work; fetched when the first of it is asked for. */
import { useLayoutEffect, useMemo } from 'react'
import type { MachineBodies } from '../machine-bodies.ts'
import type { Sign } from '../sign.ts'
import type { StageLoop } from '../stage-loop.ts'
import type { GearSignProps } from '../stage-props.ts'
import type { Theme } from '../../material/substances.ts'
import { usePatterns } from '../../shape-work/patterns.ts'
import { timingSign } from '../../timing/stage-sign.ts'
import { compoundSign } from './compound.ts'
import { contactSign } from './contact.ts'
import { forceSign } from './forces.ts'
import { showsLines } from './shown.ts'
import { overlapSign } from './timing.ts'

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
    </>
  )
}

function Contact(props: GearSignsProps) {
  const { gearing } = props.bodies.machine
  return <SignObject {...props} sign={useMemo(() => contactSign(gearing), [gearing])} />
}

function Compound(props: GearSignsProps) {
  const { misplaced, sense } = props
  const { gearing } = props.bodies.machine
  const patterns = usePatterns(gearing, misplaced)
  const sign = useMemo(() => patterns && compoundSign(gearing, patterns, sense), [gearing, patterns, sense])
  return sign && <SignObject {...props} sign={sign} />
}

function Forces(props: GearSignsProps) {
  const { loop, forceArrows, support } = props
  const { layout } = props.bodies
  const canvas = loop.renderer.domElement
  const sign = useMemo(
    () => forceSign(layout, forceArrows, support, canvas),
    [layout, forceArrows, support, canvas],
  )
  return <SignObject {...props} sign={sign} />
}

function Timing(props: GearSignsProps) {
  const { bodies, theme } = props
  const sign = useMemo(() => {
    const overlap = timingSign(bodies.machine)
    return overlap && overlapSign(bodies.layout, overlap, theme)
  }, [bodies, theme])
  return sign && <SignObject {...props} sign={sign} />
}

function SignObject({ loop, wake, sign }: GearSignsProps & { readonly sign: Sign }) {
  useLayoutEffect(() => {
    loop.signs.push(sign)
    wake()
    return () => {
      loop.signs.splice(loop.signs.indexOf(sign), 1)
      sign.dispose()
      wake()
    }
  }, [loop, sign, wake])
  return <primitive object={sign.object} />
}
