/** One of a few, as buttons beside each other. */
import './controls.css'

interface ChoiceProps<Value extends string> {
  readonly label: string
  readonly choices: readonly { readonly value: Value; readonly label: string }[]
  readonly value: Value
  readonly columns?: number
  readonly onChange: (value: Value) => void
}

export function Choice<Value extends string>({
  label,
  choices,
  value,
  columns,
  onChange,
}: ChoiceProps<Value>) {
  return (
    <div
      className="panel-choice"
      role="group"
      aria-label={label}
      style={{ gridTemplateColumns: `repeat(${columns ?? choices.length}, minmax(0, 1fr))` }}
    >
      {choices.map((each) => (
        <button
          key={each.value}
          type="button"
          className="button"
          aria-pressed={value === each.value}
          onClick={() => onChange(each.value)}
        >
          {each.label}
        </button>
      ))}
    </div>
  )
}
