/** What the transport's buttons and keys do: hand turns of whole ticks, runs, stops. */
import { TICKS_PER_TURN } from '../../sim/drive/turns.ts'
import { isHeld } from './asking.ts'
import { hold, turnByDrive, turnByDriveFor, turnByHand, zero } from './frame.ts'
import type { Workshop } from './workshop.ts'

export const HAND_STEPS = ['degree', 'tooth', 'quarter', 'turn', 'wheel'] as const
export type HandStep = (typeof HAND_STEPS)[number]

/** Ticks of one hand turn at the worm; a tooth is one tooth of the wheels, a wheel turn is z2/z1 worm turns. */
export function handTicks(stepName: HandStep, z1: number, z2: number): number {
  const ticks = {
    degree: TICKS_PER_TURN / 360,
    tooth: TICKS_PER_TURN / z1,
    quarter: TICKS_PER_TURN / 4,
    turn: TICKS_PER_TURN,
    wheel: (TICKS_PER_TURN / z1) * z2,
  }
  return ticks[stepName]
}

export function handTurn(workshop: Workshop, stepName: HandStep, way: 1 | -1): void {
  if (isHeld(workshop)) return
  const { gearing } = workshop.document.store.getState().machine
  turnByHand(workshop.frame, way * handTicks(stepName, gearing.wormStarts, gearing.wheelTeeth))
}

/** Why the drive cannot turn it now, with what would cure it; null when it can. */
export function reasonNotToTurn({ view, bench, frame }: Workshop): string | null {
  if (view.getState().apart > 0) return 'The parts are apart. Bring them together to turn the machine.'
  if (frame.drive.notComputed) return frame.drive.notComputed
  if (!bench.getState().pluggedIn) return 'It is unplugged. Plug it in to turn it, or turn it by hand.'
  return null
}

export function turnOrStop(workshop: Workshop): void {
  const { frame } = workshop
  if (frame.motion === 'running' || frame.motion === 'hand') hold(frame)
  else if (!isHeld(workshop) && !reasonNotToTurn(workshop)) turnByDrive(frame)
}

/** Runs by the drive through whole turns of the worm or of the wheels, and stops on the mark. */
export function countTurns(workshop: Workshop, count: number, of: 'worm' | 'wheel'): void {
  if (isHeld(workshop) || reasonNotToTurn(workshop)) return
  const { gearing } = workshop.document.store.getState().machine
  const each = handTicks(of === 'worm' ? 'turn' : 'wheel', gearing.wormStarts, gearing.wheelTeeth)
  hold(workshop.frame)
  turnByDriveFor(workshop.frame, count * each)
}

export function zeroCounts(workshop: Workshop): void {
  if (!isHeld(workshop)) zero(workshop.frame)
}
