/** Keeps the arrows of the stage right while they are shown; draws nothing itself. */
import { useEffect, useMemo } from 'react'
import { useWorkshop } from '../frame/workshop.ts'
import { forceArrows, thrustArrows } from './forces.ts'
import { useForces } from './use-forces.ts'

export function ForceArrowsFeed() {
  const { view } = useWorkshop()
  const { forces, end } = useForces()
  const arrows = useMemo(() => [...forceArrows(forces), ...thrustArrows(forces, end)], [forces, end])
  useEffect(() => {
    view.setState({ forceArrows: arrows })
    return () => view.setState({ forceArrows: [] })
  }, [view, arrows])
  return null
}
