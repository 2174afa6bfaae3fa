import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'

const SEED = 20_261_125

/** Even numbers in [0, 1), the same every time: a linear congruential generator with the constants of C's. */
function evenNumbers(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fffffff
    return state / 0x80000000
  }
}

/** What a designer may have under the hand while dragging, one field at a time from where the last left off. */
export function seededDrags(first: GearNumbers, count: number): GearNumbers[] {
  const next = evenNumbers(SEED)
  const between = (low: number, high: number) => low + (high - low) * next()
  const whole = (low: number, high: number) => Math.floor(between(low, high + 1))
  const one = <T>(...choices: readonly T[]): T => choices[whole(0, choices.length - 1)]!
  const moves: readonly ((gearing: GearNumbers) => Partial<GearNumbers>)[] = [
    () => ({ wheelTeeth: whole(12, 80) }),
    () => ({ wormStarts: whole(1, 4) }),
    () => ({ diameterQuotient: between(7, 16) }),
    () => ({ pressureAngle: between(14.5, 25) }),
    () => ({ wheelWidth: between(6, 16) }),
    () => ({ backlash: between(0, 0.2) }),
    () => ({ centres: { kind: 'shift', profileShift: between(-0.3, 0.3) } }),
    () => ({ profile: one('ZA', 'ZN', 'ZI', 'ZK') }),
    () => ({ hand: one('right', 'left') }),
    () => ({ wheelForm: one('throated', 'throated', 'helical') }),
  ]
  const drags: GearNumbers[] = []
  let gearing = first
  for (let n = 0; n < count; n++) {
    gearing = { ...gearing, ...one(...moves)(gearing) }
    drags.push(gearing)
  }
  return drags
}
