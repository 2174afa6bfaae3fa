/** The order that a sheet code stands for, as far as what it was made of is at hand. */
import { BANK } from '../../sim/question/bank.ts'
import { counted } from '../../sim/question/value-text.ts'
import type { AtHand, Order } from './order.ts'
import { type Coded, lessonId, printOf, readSheetCode } from './sheet-code.ts'
import { isFixed, linesOfLesson } from './sheets.ts'

export type FromCode = { readonly order: Order; readonly version: number } | { readonly problem: string }

type Chosen = Partial<Pick<Order, 'from' | 'lesson' | 'ownNumbers' | 'families' | 'aboutMachine' | 'level'>>

function chosenBy({ from }: Coded, at: AtHand): Chosen | string {
  if (from.kind === 'families') {
    return { from: 'families', families: from.wanted, level: from.wanted[0]?.level ?? 1 }
  }
  if (from.kind === 'lesson') {
    const found = at.lessons.find(({ lesson }) => lessonId(lesson.id) === from.id)
    if (!found) return 'It was made from a lesson that is not here. Open the link of the sheet instead.'
    if (printOf(linesOfLesson(found.lesson, from.own)) !== from.print)
      return 'It was made from a lesson that has changed since. Open the link of the sheet instead.'
    return { from: 'lesson', lesson: found.lesson.id, ownNumbers: from.own }
  }
  const { wormStarts, wheelTeeth, hand } = at.machine.gearing
  const same = wormStarts === from.starts && wheelTeeth === from.teeth && (hand === 'right') === from.right
  if (!same) {
    const counts = `${counted(from.starts, 'start')}, ${counted(from.teeth, 'tooth', 'teeth')}`
    const words = `${counts} and a ${from.right ? 'right' : 'left'} hand`
    return `It was made for a machine with ${words}. Open that machine, or the link of the sheet.`
  }
  return { from: 'machine', aboutMachine: from.wanted, level: from.wanted[0]?.level ?? 1 }
}

/** A code of one version of a class brings back the class, up to that version at least. */
export function orderFromCode(text: string, order: Order, at: AtHand): FromCode {
  const read = readSheetCode(text, BANK)
  if ('problem' in read) return read
  const { coded } = read
  const chosen = chosenBy(coded, at)
  if (typeof chosen === 'string') return { problem: chosen }
  const versions = coded.version === 0 ? 1 : Math.max(2, coded.version, order.versions)
  const back = { ...order, ...chosen, seed: coded.seed, versions }
  const kept = isFixed(back) ? { ...back, seed: order.seed, versions: order.versions } : back
  return { order: kept, version: coded.version }
}
