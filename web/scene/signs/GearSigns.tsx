/** What can be drawn over the gears to show how they work; fetched when the first of it is asked for. */
import { useLayoutEffect, useMemo } from 'react'
import type { MachineBodies } from '../machine-bodies.ts'
import type { Sign } from '../sign.ts'
import type { StageLoop } from '../stage-loop.ts'
import type { GearSignProps } from '../stage-props.ts'
import type { Theme } from '../../material/substances.ts'
import { contactSign } from './contact.ts'

export interface GearSignsProps extends GearSignProps {
  readonly loop: StageLoop
  readonly bodies: MachineBodies
  readonly theme: Theme
  /** Asks for a picture. */
  readonly wake: () => void
}

export function GearSigns(props: GearSignsProps) {
  const { gearSigns } = props
  return <>{gearSigns.contact && <Contact {...props} />}</>
}

function Contact(props: GearSignsProps) {
  const { gearing } = props.bodies.machine
  return <SignObject {...props} sign={useMemo(() => contactSign(gearing), [gearing])} />
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
