/** A mixed number set as people write it, read as plain text. */
import { type MixedTurns, mixedText } from '../instrument/mixed.ts'

export function Mixed({ turns }: { readonly turns: MixedTurns }) {
  const { whole, top, bottom } = turns
  if (top === 0) return whole
  return (
    <>
      <span className="mixed" aria-hidden="true">
        {whole > 0 && whole}
        <sup>{top}</sup>⁄<sub>{bottom}</sub>
      </span>
      <span className="unseen">{mixedText(turns)}</span>
    </>
  )
}
