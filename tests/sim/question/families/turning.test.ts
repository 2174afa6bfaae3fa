import { expect, test } from 'vitest'
import { TURNING } from '../../../../sim/question/families/turning.ts'
import { checkFamily } from '../../../support/question-check.ts'

test.each(TURNING.map(({ name }) => name))('%s asks what may be asked, whatever is drawn', (name) => {
  expect(() => checkFamily(name)).not.toThrow()
})
