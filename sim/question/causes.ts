/** What leads to a wrong answer, in a sentence. A cause that a family words for itself is listed as 'family:cause'. */
import type { Given } from './family.ts'

const SENTENCES: Readonly<Record<string, string>> = {
  inverted: 'The ratio stands upside down: the worm makes the many turns, the wheel the few.',
  'no-starts': 'The worm has {z1} starts, so one turn moves {z1} teeth, not one.',
}

/** The sentence of a cause with the parameters in it. A cause without a sentence is a mistake of the bank. */
export function causeSentence(family: string, cause: string, given: Given): string {
  const sentence = SENTENCES[`${family}:${cause}`] ?? SENTENCES[cause]
  if (sentence === undefined) throw new Error(`${family}: the cause ${cause} has no sentence`)
  return sentence.replaceAll(/\{(\w+)\}/g, (_, name: string) => String(given[name]))
}
