/** The grammar of sums, alone: it makes a tree of a text and evaluates nothing. Fields and answers share it. */
import { create } from 'mathjs'
import { parseDependencies } from 'mathjs/number'

const math = create({ ...parseDependencies })

export const parse = math.parse
