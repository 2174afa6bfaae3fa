/** Puts questions of the record on the prediction sheet once more, with new numbers. */
import { BANK } from '../../sim/question/bank.ts'
import { leaveLent } from '../file/leave-lent.ts'
import type { Workshop } from '../frame/workshop.ts'
import { firstPredict } from '../store/predict.ts'
import type { Answered } from '../store/records.ts'
import { randomId } from './random-id.ts'

const SEED_LENGTH = 8

/** Asks the same kinds of question in Predict, as a set in this order. */
export function askAgain(workshop: Workshop, answered: readonly Answered[]): void {
  const { predict, view } = workshop
  const items = answered.map(({ family, level }) => ({ family, index: 0, level }))
  const set = { bank: BANK, seed: randomId().slice(0, SEED_LENGTH), items, at: 0 }
  leaveLent(workshop)
  predict.setState({ ...firstPredict, source: 'set', run: randomId(), set })
  view.setState({ way: 'predict', sheet: 'none' })
}
