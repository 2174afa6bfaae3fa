/** Behind the tape, for readers of screens: the last passes, brought up to date when the machine stops. */
import { useEffect, useState } from 'react'
import { copyTurns, noTurns, ticksBetween } from '../../sim/drive/turns.ts'
import { wheelSense } from '../../sim/gear/wheel-motion.ts'
import { useMachine, useWorkshop } from '../frame/workshop.ts'
import { lastPasses } from './passes.ts'

/** Where the worm stood when it last stood still. */
function useStoppedTurns() {
  const { frame } = useWorkshop()
  const [stopped, setStopped] = useState(() => copyTurns(noTurns(), frame.state.turns))
  useEffect(() => {
    const painter = () => {
      if (frame.motion !== 'still') return
      const { turns } = frame.state
      setStopped((last) => (ticksBetween(last, turns) === 0 ? last : copyTurns(noTurns(), turns)))
    }
    frame.painters.add(painter)
    painter()
    return () => void frame.painters.delete(painter)
  }, [frame])
  return stopped
}

export function PassTable() {
  const stopped = useStoppedTurns()
  const z1 = useMachine((machine) => machine.gearing.wormStarts)
  const z2 = useMachine((machine) => machine.gearing.wheelTeeth)
  const hand = useMachine((machine) => machine.gearing.hand)
  const gearing = { z1, z2, leftSense: wheelSense('left', hand), rightSense: wheelSense('right', hand) }
  const passes = lastPasses(stopped, gearing)
  return (
    <div className="unseen">
      <table>
        <caption>Last passes of the worm mark, newest first. Plus is anticlockwise seen from above.</caption>
        <thead>
          <tr>
            <th scope="col">Worm turn</th>
            <th scope="col">Left wheel</th>
            <th scope="col">Right wheel</th>
          </tr>
        </thead>
        <tbody>
          {passes.map(({ turn, left, right }) => (
            <tr key={turn}>
              <th scope="row">{turn}</th>
              <td>{left}</td>
              <td>{right}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
