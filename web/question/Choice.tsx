/** One of a few answers, as a row of large radio buttons. */
export interface ChoiceOption<T extends string | number> {
  readonly value: T
  readonly label: string
  readonly note?: string
}

interface ChoiceProps<T extends string | number> {
  readonly name: string
  readonly question: string
  readonly options: readonly ChoiceOption<T>[]
  readonly chosen: T | null
  readonly onChoose: (value: T) => void
}

export function Choice<T extends string | number>({
  name,
  question,
  options,
  chosen,
  onChoose,
}: ChoiceProps<T>) {
  return (
    <fieldset className="choice">
      <legend>{question}</legend>
      <div className="choice-row">
        {options.map(({ value, label, note }) => (
          <label key={value} className="choice-option">
            <input type="radio" name={name} checked={chosen === value} onChange={() => onChoose(value)} />
            <span className={note ? 'number' : undefined}>{label}</span>
            {note && <span className="small">{note}</span>}
          </label>
        ))}
      </div>
    </fieldset>
  )
}
