/** A number with its unit whose decimal point stands under those above it. */

interface FigureProps {
  /** As in '0.0389 N m' */
  readonly text: string
  /** The head of the column gives the unit; readers of a single number hear it all the same. */
  readonly unitUnseen?: boolean
}

export function Figure({ text, unitUnseen = false }: FigureProps) {
  const [, whole = text, part = '', unit = ''] = /^([^\s.]+)(\.\d+)?(.*)$/u.exec(text) ?? []
  return (
    <>
      {whole}
      <span className="figure-part">{part}</span>
      {unit !== '' && <span className={unitUnseen ? 'figure-unit hidden' : 'figure-unit'}>{unit}</span>}
    </>
  )
}
