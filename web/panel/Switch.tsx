/** On or off. */
import '../instrument/readings.css'

interface SwitchProps {
  readonly label: string
  readonly on: boolean
  readonly onChange: (on: boolean) => void
}

export function Switch({ label, on, onChange }: SwitchProps) {
  return (
    <label className="switch">
      <input
        type="checkbox"
        role="switch"
        checked={on}
        aria-checked={on}
        onChange={(event) => onChange(event.target.checked)}
      />
      <span className="switch-track" aria-hidden="true" />
      {label}
    </label>
  )
}
