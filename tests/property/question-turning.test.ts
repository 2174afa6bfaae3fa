/** That the bank's answers about counts, senses and fitting are what the machine does when it is turned in the core. */
import { describe, expect, test } from 'vitest'
import { followPlay, halfPlay, newPlay, settlePlay } from '../../sim/drive/play.ts'
import {
  TICKS_PER_TURN,
  advanceTicks,
  advanceTurns,
  noTurns,
  wheelTurnsValue,
  wormTurnsValue,
} from '../../sim/drive/turns.ts'
import { lead, pairProportions } from '../../sim/gear/proportions.ts'
import { farSidePhase } from '../../sim/gear/wheel-motion.ts'
import { leftWheelAngle, rightWheelAngle } from '../../sim/pose/pose.ts'
import type { Given } from '../../sim/question/family.ts'
import { bootCleaner } from '../support/machines.ts'
import { near } from '../support/near.ts'
import { questionsOf } from '../support/question-check.ts'
import { POSE_ERROR, carried, planOf, turnByTicks, turnWorm } from '../support/turned-by-hand.ts'

/** At each of the three levels */
const SEEDS = 334

interface Drawn {
  readonly answer: number
  readonly number: (name: string) => number
  readonly word: (name: string) => string
}

const drawnOf = (given: Given, answer: number): Drawn => ({
  answer,
  number: (name) => given[name] as number,
  word: (name) => given[name] as string,
})

/** Every drawn question of a family that asks for a number. */
function eachNumber(family: string, check: (drawn: Drawn) => void): void {
  let asked = 0
  for (const { question, given } of questionsOf(family, SEEDS)) {
    if (question.ask.kind !== 'number') throw new Error(`${family} asks for a number`)
    check(drawnOf(given, question.ask.answer))
    asked++
  }
  expect(asked).toBeGreaterThan(1000)
}

/** Every drawn question of a family that asks for a choice, with the option that is right. */
function eachChoice(family: string, check: (given: Given, answer: string) => void): void {
  let asked = 0
  for (const { question, given } of questionsOf(family, SEEDS)) {
    if (question.ask.kind !== 'choice') throw new Error(`${family} asks for a choice`)
    check(given, question.ask.answer)
    asked++
  }
  expect(asked).toBeGreaterThan(1000)
}

describe('counted from the poses', () => {
  test('turns-worm: the worm turns so often until the left wheel has come as far as asked', () => {
    eachNumber('turns-worm', ({ answer, number }) => {
      const [z1, z2, N] = [number('z1'), number('z2'), number('N')]
      let before = { worm: 0, left: 0 }
      let found = Number.NaN
      turnByTicks(planOf(z1, z2), (N * z2 + 1) * TICKS_PER_TURN, ({ worm, left }) => {
        const now = { worm, left: Math.abs(left) }
        if (now.left >= N) {
          const part = (N - before.left) / (now.left - before.left)
          found = before.worm + part * (now.worm - before.worm)
        }
        before = now
        return !Number.isNaN(found)
      })
      near(found, answer, z2 * POSE_ERROR)
    })
  })

  test('turns-wheel: both wheels turn so often, opposite ways', () => {
    eachNumber('turns-wheel', ({ answer, number }) => {
      const { worm, left, right } = turnWorm(planOf(number('z1'), number('z2')), number('N'))
      near(worm, number('N'), POSE_ERROR)
      near(Math.abs(left), answer, POSE_ERROR)
      near(right, -left, POSE_ERROR)
    })
  })

  test('turns-angle: the other shaft comes so far', () => {
    const seen = new Set<string>()
    eachNumber('turns-angle', ({ answer, number, word }) => {
      seen.add(`${word('from')}, ${number('z1') > 1 ? 'more starts' : 'one start'}`)
      const plan = planOf(number('z1'), number('z2'))
      const d = number('d') / 360
      if (word('from') === 'worm') near(360 * Math.abs(turnWorm(plan, d).left), answer, 360 * POSE_ERROR)
      else near(Math.abs(turnWorm(plan, answer).left), d, POSE_ERROR)
    })
    expect(seen.size).toBe(4)
  })

  test('teeth-passed: so many times another tooth of the left wheel is where the first one was', () => {
    eachNumber('teeth-passed', ({ answer, number }) => {
      const [z1, z2] = [number('z1'), number('z2')]
      let passed = 0
      const { left } = turnByTicks(planOf(z1, z2), number('N') * TICKS_PER_TURN, (turned) => {
        while (Math.abs(turned.left) * z2 >= passed + 1 - z2 * POSE_ERROR) passed++
        return false
      })
      expect(passed).toBe(Math.floor(answer))
      near(Math.abs(left) * z2, answer, z2 * POSE_ERROR)
    })
  })

  test('tooth-return: after no fewer whole turns of the worm is the left wheel where it was', () => {
    eachNumber('tooth-return', ({ answer, number, word }) => {
      const [z1, z2] = [number('z1'), number('z2')]
      const back = turnByTicks(planOf(z1, z2), z2 * TICKS_PER_TURN, ({ worm, left }) => {
        const whole = (turns: number) => Math.abs(turns - Math.round(turns)) < 10 * POSE_ERROR
        return whole(worm) && whole(left)
      })
      near(Math.abs(word('ask') === 'worm' ? back.worm : back.left), answer, POSE_ERROR)
    })
  })

  test('assembly-teeth: so far a wheel comes while that many teeth pass one by one', () => {
    eachNumber('assembly-teeth', ({ answer, number }) => {
      const [z1, z2] = [number('z1'), number('z2')]
      let degrees = 0
      for (let tooth = 0; tooth < number('k'); tooth++)
        degrees += 360 * Math.abs(turnByTicks(planOf(z1, z2), TICKS_PER_TURN / z1).left)
      near(degrees, answer, 360 * POSE_ERROR)
    })
  })
})

describe('senses by the way that points on the parts go', () => {
  /** A small turn of the worm that is seen in a sense from a place: its top goes to the eye's left or right. */
  function slightTurn(given: Given): { plan: ReturnType<typeof planOf>; turns: ReturnType<typeof noTurns> } {
    const plan = planOf(1, 20, given.hand === 'right' ? 'right' : 'left')
    const eyeLeft = given.from === 'front' ? -1 : 1
    const wanted = given.sense === 'anticlockwise' ? eyeLeft : -eyeLeft
    const fitting = [1, -1].flatMap((way) => {
      const turns = noTurns()
      advanceTicks(turns, (way * TICKS_PER_TURN) / 10)
      return Math.sign(carried(plan, 'rotor', [0, 1, 0], turns)[0]) === wanted ? turns : []
    })
    expect(fitting).toHaveLength(1)
    return { plan, turns: fitting[0]! }
  }

  test('wheel-sense: the side of the wheel to the right of the eye goes away from the front, or comes to it', () => {
    eachChoice('wheel-sense', (given, answer) => {
      const { plan, turns } = slightTurn(given)
      const part = given.wheel === 'left' ? 'leftWheel' : 'rightWheel'
      // From above, with the front at the foot of the page, +x is on the right; from below it is on the left.
      const eyeRight = given.view === 'above' ? 1 : -1
      const up = carried(plan, part, [eyeRight, 0, 0], turns)[2] < 0
      expect(answer, JSON.stringify(given)).toBe(up ? 'anticlockwise' : 'clockwise')
    })
  })

  test('pair-sense: both inner sides go the same way along the worm', () => {
    eachChoice('pair-sense', (given, answer) => {
      const { plan, turns } = slightTurn(given)
      const left = carried(plan, 'leftWheel', [1, 0, 0], turns)[2]
      const right = carried(plan, 'rightWheel', [-1, 0, 0], turns)[2]
      expect(Math.sign(left)).toBe(Math.sign(right))
      expect(answer, JSON.stringify(given)).toBe(left < 0 ? 'inner-to-motor' : 'inner-from-motor')
    })
  })
})

describe('fitting', () => {
  /** How far the tooth nearest to the front pointer is from it; `turned` from a space towards -x. */
  function missOfFront(turned: number, pitch: number): number {
    const away = (Math.PI / 2 - pitch / 2 - turned) / pitch
    return Math.abs(away - Math.round(away)) * pitch
  }

  test('assembly-phase: so far the left tooth is off while a right one stands at the front', () => {
    eachNumber('assembly-phase', ({ answer, number }) => {
      const [z1, z2] = [number('z1'), number('z2')]
      const { layout } = planOf(z1, z2)
      const pitch = (2 * Math.PI) / z2
      const turns = noTurns()
      advanceTurns(turns, (layout.rightSense * ((Math.PI / 2 - pitch / 2) % pitch)) / pitch / z1)
      near(missOfFront(rightWheelAngle(layout, turns), pitch), 0, 1e-9)
      const left = leftWheelAngle(layout, turns) + farSidePhase(z1, z2)
      near((missOfFront(left, pitch) * 180) / Math.PI, answer, 1e-6)
    })
  })

  test('lost-motion: so far the worm turns back before the left wheel follows it', () => {
    eachNumber('lost-motion', ({ answer, number }) => {
      const [z1, z2] = [number('z1'), number('z2')]
      const step = TICKS_PER_TURN / 43_200
      const turns = noTurns()
      const play = newPlay()
      settlePlay(play, turns, halfPlay(number('jt'), lead(number('d2') / z2, z1)))
      const wheel = () => wormTurnsValue(turns) + play.left
      const rest = wheel()
      let free = 0
      for (; free < 43_200; free++) {
        advanceTicks(turns, -step)
        followPlay(play, turns)
        if (Math.abs(wheel() - rest) > 1e-9) break
      }
      near((free * 360) / 43_200, answer, 360 / 43_200)
    })
  })

  test('count-limits: no pair of true counts within one turn of those counted has a larger ratio', () => {
    eachNumber('count-limits', ({ answer, number }) => {
      const [N1, N2] = [number('N1'), number('N2')]
      const ratios = [-1, 0, 1].flatMap((one) => [-1, 0, 1].map((other) => (N1 + one) / (N2 + other)))
      near(answer, Math.max(...ratios), 1e-9)
    })
  })

  test('design-spacing: the shafts of a machine of that module are as far apart', () => {
    eachNumber('design-spacing', ({ answer, number }) => {
      const { centreDistance } = pairProportions({
        ...bootCleaner.gearing,
        wormStarts: number('z1'),
        wheelTeeth: number('z2'),
        axialModule: number('m'),
        diameterQuotient: number('q'),
        centres: { kind: 'shift', profileShift: 0 },
      })
      near(2 * centreDistance, answer, 1e-9)
    })
  })

  test('design-teeth: of all tooth counts none brings the wheel nearer to the wanted speed', () => {
    eachNumber('design-teeth', ({ answer, number }) => {
      const [z1, n, n2] = [number('z1'), number('n'), number('n2')]
      const aMinute = { turns: n, ticks: 0, rest: 0 }
      const misses = Array.from({ length: 100 }, (_, i) => ({
        z2: i + 5,
        miss: Math.abs(wheelTurnsValue(aMinute, z1, i + 5) - n2),
      }))
      const least = misses.toSorted((a, b) => a.miss - b.miss)[0]!
      expect(least.z2, `${z1} x ${n} / ${n2}`).toBe(answer)
    })
  })
})

test('step-turns: so many more turns are counted when each second is run by itself', () => {
  eachNumber('step-turns', ({ answer, number }) => {
    const [z1, z2, t] = [number('z1'), number('z2'), number('t')]
    const counted = (n: number): number => {
      const turns = noTurns()
      for (let second = 0; second < t; second++) advanceTicks(turns, (n / 60) * TICKS_PER_TURN)
      return wheelTurnsValue(turns, z1, z2)
    }
    near(counted(number('nB')) - counted(number('nA')), answer, 1e-9)
  })
})
