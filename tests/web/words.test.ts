import { expect, test } from 'vitest'
import { TICKS_PER_TURN, advanceTicks, noTurns } from '../../sim/drive/turns.ts'
import { ratioHeadline, ratioSentence, stageText, wheelsAtPointers } from '../../web/instrument/words.ts'

const at = (turns: number) => {
  const place = noTurns()
  advanceTicks(place, turns * TICKS_PER_TURN)
  return place
}

test('the headline says the ratio in words where there is a word, else as a mixed number', () => {
  expect(ratioHeadline(1, 20).join(' ')).toBe('Twenty turns in, one turn out')
  expect(ratioHeadline(2, 27).join(' ')).toBe('13½ turns in, one turn out')
  expect(ratioHeadline(3, 31).join(' ')).toBe('10⅓ turns in, one turn out')
  expect(ratioHeadline(7, 37).join(' ')).toBe('5 2/7 turns in, one turn out')
  expect(ratioHeadline(8, 8).join(' ')).toBe('One turn in, one turn out')
})

test('the sentence counts starts and teeth', () => {
  expect(ratioSentence(1, 20)).toContain('single start moves both wheels on by one tooth')
  expect(ratioSentence(3, 31)).toContain(
    'three starts moves both wheels on by three teeth. A wheel has 31 teeth.',
  )
})

test('the spoken summary tells opposite senses for the two wheels, and from where', () => {
  const said = stageText(at(5), 1, 20, 'right')
  expect(said).toContain('Worm 5 turns anticlockwise seen from the front')
  expect(said).toContain('left wheel 0.25 turns anticlockwise seen from above')
  expect(said).toContain('right wheel 0.25 turns clockwise seen from above')
  expect(stageText(at(5), 1, 20, 'left')).toContain('left wheel 0.25 turns clockwise')
  expect(stageText(at(0), 1, 20, 'right')).toContain('Worm is at its pointer')
})

test('both marks are back only after whole wheel turns, either way, and not at the beginning', () => {
  expect(wheelsAtPointers(at(0), 1, 20)).toBe(false)
  expect(wheelsAtPointers(at(19), 1, 20)).toBe(false)
  expect(wheelsAtPointers(at(20), 1, 20)).toBe(true)
  expect(wheelsAtPointers(at(-40), 1, 20)).toBe(true)
  expect(wheelsAtPointers(at(31), 3, 31)).toBe(true)
  expect(wheelsAtPointers(at(30), 3, 31)).toBe(false)
})
