/** A number by hand, with its words beside it. */
import './controls.css'

interface SliderProps {
  readonly label: string
  readonly least: number
  readonly most: number
  readonly step: number
  readonly value: number
  /** The value as it is read. */
  readonly text: string
  readonly onChange: (value: number) => void
}

export function Slider({ label, least, most, step, value, text, onChange }: SliderProps) {
  return (
    <label className="panel-slider">
      <span>{label}</span>
      <span className="panel-slider-text">{text}</span>
      <input
        type="range"
        aria-label={label}
        aria-valuetext={text}
        min={least}
        max={most}
        step={step}
        value={value}
        onChange={(event) => onChange(Number(event.target.value))}
      />
    </label>
  )
}
