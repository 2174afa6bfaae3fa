/** On a projector, where there are no panels: at which part the light stands, and the presenter's remote to move it. */
import { useMemo } from 'react'
import { useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { powersWay } from './powers-way.ts'
import { useWalkingKeys } from './use-walking-keys.ts'
import './powers-way.css'

export function WayInLarge({ left }: { readonly left: number }) {
  const workshop = useWorkshop()
  const machine = useMachine((now) => now)
  const lit = useView((view) => view.lit)
  const way = useMemo(() => powersWay(machine), [machine])
  useWalkingKeys(workshop, way, null)
  const place = way.findIndex(({ stop }) => stop === lit)
  return (
    <p className="way-in-large" style={{ left }} role="status">
      {way[place] && `${place + 1}. ${way[place].name}`}
    </p>
  )
}
