import { describe, expect, test } from 'vitest'
import bootCleaner from '../../assets/machines/boot-cleaner.json'
import { farSidePhase, handSign } from '../../sim/gear/wheel-motion.ts'
import type { Hand } from '../../sim/gear/gear-numbers.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { machineLayout } from '../../sim/pose/layout.ts'
import { leftWheelAngle, rightWheelAngle } from '../../sim/pose/pose.ts'
import { TICKS_PER_TURN } from '../../sim/drive/turns.ts'
import { halfTooth, threadPaths, threadShift, wheelPath } from '../../web/instrument/plan-shapes.ts'

const boots = bootCleaner as Machine

function drawn(wormStarts: number, wheelTeeth: number, hand: Hand) {
  const layout = machineLayout({ ...boots, gearing: { ...boots.gearing, wormStarts, wheelTeeth, hand } })
  const { gears } = layout
  const { axialModule } = boots.gearing
  const { axialPressureAngle } = gears
  const wheel = {
    teeth: wheelTeeth,
    axialModule,
    axialPressureAngle,
    rootRadius: gears.rootRadiusWheel,
    tipRadius: gears.throatRadiusWheel,
  }
  const thread = {
    starts: wormStarts,
    hand: handSign(hand),
    axialModule,
    axialPressureAngle,
    rootRadius: gears.rootRadiusWorm,
    tipRadius: gears.tipRadiusWorm,
    length: gears.threadLength,
  }
  return { layout, wheel, thread }
}

describe('the drawn wheel', () => {
  test.each([20, 27, 31])('has %i teeth', (teeth) => {
    const { wheel } = drawn(1, teeth, 'right')
    const radii = wheelPath(wheel)
      .slice(1, -1)
      .split('L')
      .map((point) => Math.hypot(...(point.split(' ').map(Number) as [number, number])))
    const tips = radii.filter(
      (r, i) => r > wheel.tipRadius - 0.01 && radii.at(i - 1)! < wheel.tipRadius - 0.01,
    )
    expect(tips).toHaveLength(teeth)
  })
  test('has teeth as wide as its spaces on the reference circle', () => {
    const { wheel, layout } = drawn(1, 20, 'right')
    expect(halfTooth(wheel, layout.gears.referenceRadiusWheel)).toBeCloseTo(Math.PI / 40, 12)
  })
})

describe('the drawn worm', () => {
  test('moves its threads by a whole number of pitches in a turn, so that the pattern closes', () => {
    const { thread } = drawn(3, 31, 'right')
    const pitch = Math.PI * thread.axialModule
    expect(threadShift(thread, 0)).toBeCloseTo(0, 12)
    expect(threadShift(thread, 1 / 3 - 1e-9)).toBeCloseTo(-pitch, 6)
    expect(threadShift({ ...thread, hand: -1 }, 0.1)).toBeCloseTo(0.3 * pitch, 9)
  })
  test('draws enough threads to fill its length wherever they stand', () => {
    const { thread } = drawn(4, 40, 'left')
    const count = threadPaths(thread).match(/M/g)?.length ?? 0
    expect((count - 1) * Math.PI * thread.axialModule).toBeGreaterThan(
      thread.length + 2 * Math.PI * thread.axialModule,
    )
  })
})

/** By how much a point of the wheel, x from the worm's axis, lies inside the nearest thread [mm]; negative is clear. */
function depthInThread(
  thread: ReturnType<typeof drawn>['thread'],
  r1: number,
  crest: number,
  x: number,
  z: number,
): number {
  if (x > thread.tipRadius) return Number.NEGATIVE_INFINITY
  const pitch = Math.PI * thread.axialModule
  const off = z - crest - pitch * Math.round((z - crest) / pitch)
  return pitch / 4 + (r1 - x) * Math.tan(thread.axialPressureAngle) - Math.abs(off)
}

describe('worm and wheels of the drawing', () => {
  test.each([
    [1, 20, 'right'],
    [2, 27, 'right'],
    [3, 31, 'left'],
    [4, 40, 'right'],
  ] as const)('touch and do not overlap, %i starts, %i teeth, %s hand', (z1, z2, hand) => {
    const { layout, wheel, thread } = drawn(z1, z2, hand)
    const { centreDistance: a, referenceRadiusWorm: r1 } = layout.gears
    const halfLead = (z1 * Math.PI * thread.axialModule) / 2
    for (const side of ['right', 'left'] as const) {
      for (let step = 0; step < 40; step++) {
        const ticks = Math.round((step / 40) * TICKS_PER_TURN)
        const turns = { turns: 7, ticks, rest: 0 }
        const turned =
          side === 'right'
            ? rightWheelAngle(layout, turns)
            : leftWheelAngle(layout, turns) + farSidePhase(z1, z2)
        const crest =
          threadShift(thread, ticks / TICKS_PER_TURN) + (side === 'left' ? thread.hand * halfLead : 0)
        let deepest = Number.NEGATIVE_INFINITY
        for (let tooth = 0; tooth < z2; tooth++) {
          for (let i = 0; i <= 40; i++) {
            const r = wheel.rootRadius + (i / 40) * (wheel.tipRadius - wheel.rootRadius)
            for (const flank of [-1, 1]) {
              const angle = ((tooth + 0.5) * 2 * Math.PI) / z2 + flank * halfTooth(wheel, r) + turned
              const x = (side === 'right' ? a : -a) - r * Math.cos(angle)
              deepest = Math.max(deepest, depthInThread(thread, r1, crest, Math.abs(x), r * Math.sin(angle)))
            }
          }
        }
        expect(deepest).toBeLessThan(1e-6 * thread.axialModule)
        expect(deepest).toBeGreaterThan(-1e-3 * thread.axialModule)
      }
    }
  })
})
