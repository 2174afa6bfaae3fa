/** Seeds that are easy to say and to type: consonant and vowel in turn. */
const CONSONANTS = 'bdfghklmnprstvz'
const VOWELS = 'aeiou'
const SYLLABLES = 2

/** `number` gives a whole number from 0 to below its argument. */
export const seedWord = (number: (n: number) => number): string =>
  Array.from(
    { length: SYLLABLES },
    () => CONSONANTS[number(CONSONANTS.length)]! + VOWELS[number(VOWELS.length)]!,
  ).join('')

/** By chance, from the browser. */
export const chance = (n: number): number => {
  const [drawn = 0] = crypto.getRandomValues(new Uint32Array(1))
  return Math.floor((drawn / 2 ** 32) * n)
}
