/** Trade spelling of numbers and units, put into the grammar that quantity.ts reads. */

const LONGEST_TEXT = 80

const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/−/g, '-'],
  [/[×·⋅∙]/g, '*'],
  [/÷/g, '/'],
  [/²/g, '^2'],
  [/³/g, '^3'],
  [/[ΩΩ]/g, 'ohm'],
  [/[µμ]/g, 'u'],
  [/°/g, ' deg'],
  [/%/g, ' percent'],
  // a thin or plain space between groups of three digits
  [/(\d)[ \u00a0\u2009\u202f](?=\d{3}(?!\d))/g, '$1'],
  [/[\u00a0\u2009\u202f]/g, ' '],
  // kgf-cm is a product of two units, not a difference
  [/([A-Za-z])-(?=[A-Za-z])/g, '$1 '],
  // kg cm2, but not the exponent of 2e3
  [/(?<=[A-Za-z])(?<!\d\.?[eE])(?=\d)/g, '^'],
  // mathjs takes the word "in" for a conversion
  [/\bin\b/g, 'inch'],
]

const NUMBER_WITH_COMMA = /[\d.]*,[\d.,]*/g

/** '2,5' is 2.5, but '1,000' can mean one or a thousand, so the person has to say which. */
function pointForComma(text: string): { text: string } | { problem: string } {
  let unclear: string | undefined
  const replaced = text.replace(NUMBER_WITH_COMMA, (number) => {
    const [, whole, part] = /^(\d+),(\d+)$/.exec(number) ?? []
    if (whole === undefined || part === undefined || (part.length === 3 && Number(whole) !== 0)) {
      unclear ??= number
      return number
    }
    return `${whole}.${part}`
  })
  if (unclear === undefined) return { text: replaced }
  return {
    problem: `must have a point for decimals and no mark for thousands, as in 2.5 or 2500, got '${unclear}'`,
  }
}

/** The text in plain spelling, or what is wrong with it before any sum is looked at. */
export function plainSpelling(text: string, example: string): { text: string } | { problem: string } {
  if (text.trim() === '') return { problem: `must be ${example}, got nothing` }
  if (text.length > LONGEST_TEXT) {
    return { problem: `must be at most ${LONGEST_TEXT} characters long, got ${text.length}` }
  }
  const points = pointForComma(text)
  if ('problem' in points) return points
  return { text: SPELLINGS.reduce((spelt, [from, to]) => spelt.replace(from, to), points.text) }
}
