import { expect, test } from 'vitest'
import { contactField } from '../../sim/gear/contact-field.ts'
import { contactRatio } from '../../sim/gear/contact-ratio.ts'
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { pairProportions } from '../../sim/gear/proportions.ts'
import {
  type CloseUp,
  type ContactPlace,
  type MeshPlace,
  carryingFlank,
  closeUp,
  drawnTimes,
  findContact,
  gapOn,
  gapTimes,
  linesTouching,
  placeMesh,
} from '../../web/gears/close-up.ts'
import {
  averageWords,
  formWords,
  slidingWords,
  touchWords,
  wheelPlay,
  wormPlay,
} from '../../web/gears/contact-words.ts'
import { setCuts } from '../../web/frame/frame-state.ts'
import { turnByHand } from '../../web/frame/frame.ts'
import { createWorkshop } from '../../web/frame/workshop.ts'
import { fieldsOf, followFrame, newTouching } from '../../web/gears/touching.ts'
import { signsWith } from '../../web/panel/panels.ts'
import { slidingSpan } from '../../web/gears/sliding.ts'
import { backlashWords, leavingSide, micrometres, patternWords } from '../../web/gears/setting-words.ts'
import { NO_SIGNS } from '../../web/store/view.ts'
import { bootCleaner, ventOpener } from '../support/machines.ts'
import { between, near } from '../support/near.ts'

const one = bootCleaner.gearing
const GEARINGS: readonly (readonly [string, GearNumbers])[] = [
  ['1/20 as it comes', one],
  ['left hand', { ...one, hand: 'left' }],
  ['ZI', { ...one, profile: 'ZI' }],
  ['plain on ZI', { ...one, profile: 'ZI', wheelForm: 'helical' }],
  ['two starts', ventOpener.gearing],
]

const newPlace = (): MeshPlace => ({ wheel: 0, play: 0 })
const newContact = (): ContactPlace => ({ x: 0, y: 0, z: 0 })

const places = (values: Float64Array): [number, number][] =>
  Array.from({ length: values.length / 2 }, (_, i): [number, number] => [values[2 * i]!, values[2 * i + 1]!])

/** From a point to a line of points [mm]. */
function distance(line: readonly (readonly [number, number])[], x: number, z: number): number {
  let least = Infinity
  for (let i = 1; i < line.length; i++) {
    const [ax, az] = line[i - 1]!
    const [bx, bz] = line[i]!
    const length = (bx - ax) ** 2 + (bz - az) ** 2
    const t = length === 0 ? 0 : ((x - ax) * (bx - ax) + (z - az) * (bz - az)) / length
    const u = Math.min(1, Math.max(0, t))
    least = Math.min(least, Math.hypot(ax + u * (bx - ax) - x, az + u * (bz - az) - z))
  }
  return least
}

/** A tenth of a pixel where the close-up is drawn six times life size [mm]. */
const UNSEEN = 0.1 / 22.7

function contactsOn(of: CloseUp, flank: 0 | 1, wheel: number): ContactPlace[] {
  const path = of.paths[flank]
  const found: ContactPlace[] = []
  for (let k = -9; k <= 9; k++) {
    const at = newContact()
    if (findContact(at, path, wheel + k * of.axialPitch)) found.push(at)
  }
  return found
}

test.each(GEARINGS)(
  '%s: every dot lies on the thread and on the tooth as they are drawn',
  (_name, gearing) => {
    const planes = gearing.wheelForm === 'helical' ? [0] : [-2, 0, 3]
    let dots = 0
    for (const y of planes) {
      const of = closeUp(gearing, y)
      const thread = places(of.thread)
      const space = places(of.space)
      for (const flank of [0, 1] as const) {
        const half = thread.length / 2
        const side = flank === 0 ? thread.slice(0, half) : thread.slice(half)
        for (let i = 0; i < 12; i++) {
          const wheel = (of.axialPitch * i) / 12
          for (const { x, y: at, z } of contactsOn(of, flank, wheel)) {
            if (gearing.wheelForm === 'helical' && Math.abs(at) > 0.02) continue
            dots++
            const overThread = Array.from({ length: 19 }, (_, k) =>
              distance(side, x, z - wheel - (k - 9) * of.axialPitch),
            )
            near(Math.min(...overThread), 0, UNSEEN + Math.abs(at - y))
            const onTooth = Array.from({ length: 19 }, (_, j) => {
              const turn = wheel / of.wheelRadius + (j - 9) * of.toothPitch
              const [dx, dz] = [x - of.centreDistance, z]
              return distance(
                space,
                dx * Math.cos(turn) - dz * Math.sin(turn),
                dx * Math.sin(turn) + dz * Math.cos(turn),
              )
            })
            near(Math.min(...onTooth), 0, UNSEEN + Math.abs(at - y))
          }
        }
      }
    }
    expect(dots).toBeGreaterThan(0)
  },
)

test.each(GEARINGS)('%s: as many lines touch on average as the contact ratio says', (_name, gearing) => {
  const field = contactField(gearing, 1)
  const steps = 2000
  let sum = 0
  for (let i = 0; i < steps; i++) sum += linesTouching(field, (field.axialPitch * i) / steps)
  near(sum / steps, contactRatio(gearing).total, 0.01)
})

test('the left mesh stands as the right one does half a turn later', () => {
  const left = newPlace()
  const right = newPlace()
  const p = pairProportions(one).screwParameter
  placeMesh(left, 'left', p, 0.1, -0.002)
  placeMesh(right, 'right', p, 0.6, -0.002)
  near(left.wheel, right.wheel, 1e-12)
  near(left.play, right.play, 1e-15)
})

test('the worm fills the space but for the backlash, and rests on the flank that drives', () => {
  const jx = 0.08
  for (const play of [-0.04, -0.01, 0, 0.03, 0.04]) near(gapOn(1, play, jx) + gapOn(-1, play, jx), jx, 1e-15)
  expect(carryingFlank(-0.04, jx, 1, 1)).toBe(-1)
  expect(carryingFlank(0.04, jx, 1, 1)).toBe(1)
  expect(carryingFlank(0, jx, 1, 1)).toBe(0)
  // Without play the sense decides: a right hand worm about +z drives with its -z side.
  expect(carryingFlank(0, 0, 1, 1)).toBe(-1)
  expect(carryingFlank(0, 0, -1, 1)).toBe(1)
  expect(carryingFlank(0, 0, 1, -1)).toBe(1)
})

test('it is drawn as large as fits, and the gap no wider than the thread can spare', () => {
  expect(drawnTimes(2 * Math.PI, 280, 1.85)).toBe(6)
  expect(drawnTimes(100, 280, 1.85)).toBe(1)
  expect(gapTimes(2 * Math.PI, 0.08)).toBe(12)
  expect(gapTimes(2 * Math.PI, 0.01)).toBe(20)
  expect(gapTimes(2 * Math.PI, 0)).toBe(1)
})

test('lost motion is the backlash over lead and reference circle', () => {
  near(wormPlay({ ...one, backlash: 0.08 }), (360 * 0.08) / (2 * Math.PI), 1e-12)
  near(wheelPlay({ ...one, backlash: 0.08 }) * 20, wormPlay({ ...one, backlash: 0.08 }), 1e-12)
})

test('sliding spans what it is at the pitch point', () => {
  const { least, most, angle } = slidingSpan(one, contactField(one, 1))
  // v1/cos g of the reference circle, at 1 rad/s
  const pitch = Math.hypot(10, 1) / 1000
  between(pitch, least, most)
  between(angle!, 0, 90)
  const plain = { ...one, profile: 'ZI', wheelForm: 'helical' } as const
  expect(slidingSpan(plain, contactField(plain, 1)).angle).toBeNull()
})

test('words of the contact panel', () => {
  expect(touchWords(2, 'throated')).toBe('2 lines touch now')
  expect(touchWords(1, 'throated')).toBe('1 line touches now')
  expect(touchWords(0, 'throated')).toBe('No line touches now')
  expect(touchWords(2, 'helical')).toBe('2 points touch now')
  expect(averageWords(2.0916, 'throated')).toBe('On average 2.1 pairs of flanks carry.')
  expect(formWords({ ...one, wheelForm: 'helical', profile: 'ZA' })).toContain('only on a ZI worm')
  expect(formWords({ ...one, wheelForm: 'helical', profile: 'ZI' })).not.toContain('only on a ZI worm')
  expect(slidingWords('right', 1, null)).toContain('upwards')
  expect(slidingWords('left', 1, 2.4)).toBe(
    'On the left wheel the thread slides downwards along the tooth, at 2° to the line of contact.',
  )
})

test('words for a bearing pattern say where contact went and what it costs', () => {
  const seen = { share: 0.2, middle: -0.8, leaving: 1, helical: false } as const
  expect(patternWords(seen)).toBe(
    'Contact has moved to the edge at the entering side: 20 % of the flank is marked.',
  )
  expect(patternWords({ ...seen, leaving: -1 })).toContain('leaving side')
  expect(patternWords({ ...seen, share: 0.93, middle: 0.01 })).toContain('nearly all over')
  expect(patternWords({ ...seen, share: 0 })).toMatch(/^Nothing is marked/)
  expect(leavingSide('right', 1)).toBe(1)
  expect(leavingSide('left', 1)).toBe(-1)
  expect(micrometres(-19.04)).toBe('−19.0 µm')
  expect(micrometres(0.01)).toBe('0 µm')
  expect(backlashWords(-38)).toMatch(/^It would jam/)
  expect(backlashWords(42)).toBe('42.0 µm of backlash are left.')
})

test('without backlash the flank that carries is the one of the sense in which the worm last turned', () => {
  const machine = { ...bootCleaner, gearing: { ...bootCleaner.gearing, backlash: 0 } }
  const { frame, bench } = createWorkshop(machine, 'light')
  const touching = newTouching(machine, 'right', fieldsOf(machine))
  const carries = () => {
    followFrame(touching, frame)
    return touching.carrying
  }
  const forth = carries()
  setCuts(frame, true)
  turnByHand(frame, -1000)
  expect(carries()).toBe(-forth)
  turnByHand(frame, 1000)
  expect(carries()).toBe(forth)
  // Poles that are swapped move nothing by themselves.
  bench.setState({ sense: -1 })
  expect(carries()).toBe(forth)
})

test('a panel brings its signs and takes them away, unless they are kept', () => {
  expect(signsWith('contact', NO_SIGNS, [])).toEqual({ ...NO_SIGNS, contact: true })
  expect(signsWith('figures', { ...NO_SIGNS, contact: true }, [])).toEqual(NO_SIGNS)
  expect(signsWith('forces', NO_SIGNS, ['contact'])).toEqual({ ...NO_SIGNS, contact: true, forces: true })
  expect(signsWith('none', { ...NO_SIGNS, compound: true }, [])).toEqual({ ...NO_SIGNS, compound: true })
})
