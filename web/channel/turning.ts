/** How the presenter window turns the machine: as the stage's own buttons do. */
import { TICKS_PER_TURN } from '../../sim/drive/turns.ts'
import { isHeld } from '../frame/asking.ts'
import { hold, turnByDrive, turnByHand, zero } from '../frame/frame.ts'
import type { Workshop } from '../frame/workshop.ts'

const canTurn = ({ view, bench, frame }: Workshop): boolean =>
  view.getState().apart === 0 && frame.drive.notComputed === null && bench.getState().pluggedIn

export function turnOrStop(workshop: Workshop): void {
  const { frame } = workshop
  if (frame.motion === 'running' || frame.motion === 'hand') hold(frame)
  else if (!isHeld(workshop) && canTurn(workshop)) turnByDrive(frame)
}

/** One turn of the worm, or of a wheel, by hand. */
export function turnOnce(workshop: Workshop, of: 'worm' | 'wheel'): void {
  if (isHeld(workshop)) return
  const { wormStarts, wheelTeeth } = workshop.document.store.getState().machine.gearing
  const ticks = of === 'worm' ? TICKS_PER_TURN : (TICKS_PER_TURN / wormStarts) * wheelTeeth
  turnByHand(workshop.frame, ticks)
}

export function zeroCounts(workshop: Workshop): void {
  if (!isHeld(workshop)) zero(workshop.frame)
}
