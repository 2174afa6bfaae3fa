/** An infrared thermometer held at the motor's case: what it shows, and why that can be wrong. */
import { type Dispatch, type SetStateAction, useId, useState } from 'react'
import { SURFACE_KINDS } from '../../sim/heat/thermometer.ts'
import { useWidth } from '../chart/use-width.ts'
import { useBench, useView } from '../frame/workshop.ts'
import { Slider } from '../panel/Slider.tsx'
import { StepField } from '../instrument/StepField.tsx'
import { ThermoScale } from './ThermoScale.tsx'
import type { ThermalMachine } from './heat-machine.ts'
import {
  type ThermoSetting,
  behindWords,
  fooledWords,
  rangeText,
  shownFor,
  usualEmissivity,
} from './thermo-words.ts'

const FIRST_KIND = 1
/** As such instruments leave the works, or cannot be set at all */
const USUAL_SETTING = 0.95

export function Thermometer({ machine }: { readonly machine: ThermalMachine }) {
  const look = useView((view) => view.heatLook)
  const magnet = useBench((bench) => bench.magnet)
  const T = look?.machine === machine ? look.case : magnet
  const [kind, setKind] = useState(FIRST_KIND)
  const [thermo, setThermo] = useState<ThermoSetting>({
    emissivity: usualEmissivity(SURFACE_KINDS[FIRST_KIND]!),
    setting: USUAL_SETTING,
    surroundings: machine.thermal.ambient,
  })
  const [box, width] = useWidth<HTMLDivElement>()
  return (
    <section aria-label="A thermometer without contact">
      <h3>A thermometer without contact</h3>
      <p>{fooledWords(T, thermo)}</p>
      <div className="drive-figure" ref={box}>
        <ThermoScale T={T} shown={shownFor(T, thermo)} surroundings={thermo.surroundings} width={width} />
      </div>
      <SurfaceChoice
        kind={kind}
        onKind={(next) => {
          setKind(next)
          setThermo({ ...thermo, emissivity: usualEmissivity(SURFACE_KINDS[next]!) })
        }}
      />
      <Slider
        label="Emissivity of the surface"
        least={0.02}
        most={1}
        step={0.01}
        value={thermo.emissivity}
        text={`${thermo.emissivity}; usual ${rangeText(SURFACE_KINDS[kind]!)}`}
        onChange={(emissivity) => setThermo({ ...thermo, emissivity })}
      />
      <InstrumentFields thermo={thermo} setThermo={setThermo} />
      <Behind thermo={thermo} />
      <p>
        Put a piece of matt tape, or a dab of matt paint, on a bare case and aim at that: both give off nearly
        all that a black surface would. On a shiny one you read the room.
      </p>
      <p className="small">
        Worked out for a grey surface and all of its radiation. Instruments see a band of it and differ, so
        take the size of the mistake and not its degrees.
      </p>
    </section>
  )
}

interface SurfaceChoiceProps {
  readonly kind: number
  readonly onKind: (kind: number) => void
}

function SurfaceChoice({ kind, onKind }: SurfaceChoiceProps) {
  const id = useId()
  return (
    <div className="field thermo-surface">
      <label htmlFor={id}>Surface</label>
      <select id={id} value={kind} onChange={(event) => onKind(Number(event.target.value))}>
        {SURFACE_KINDS.map(({ name }, index) => (
          <option key={name} value={index}>
            {name}
          </option>
        ))}
      </select>
    </div>
  )
}

interface InstrumentFieldsProps {
  readonly thermo: ThermoSetting
  readonly setThermo: Dispatch<SetStateAction<ThermoSetting>>
}

function InstrumentFields({ thermo, setThermo }: InstrumentFieldsProps) {
  return (
    <div className="heat-duty">
      <StepField
        label="Instrument set to"
        value={thermo.setting}
        min={0.1}
        max={1}
        step={0.01}
        less="Lower setting"
        more="Higher setting"
        onChange={(setting) => {
          setThermo((now) => ({ ...now, setting }))
          return null
        }}
      />
      <StepField
        label="Surroundings"
        value={thermo.surroundings}
        min={-40}
        max={200}
        step={1}
        less="Cooler surroundings"
        more="Warmer surroundings"
        suffix="°C"
        onChange={(surroundings) => {
          setThermo((now) => ({ ...now, surroundings }))
          return null
        }}
      />
    </div>
  )
}

const FIRST_READING = 38

/** The other way round: from what was read to what it was. */
function Behind({ thermo }: { readonly thermo: ThermoSetting }) {
  const [reading, setReading] = useState(FIRST_READING)
  return (
    <div className="thermo-behind">
      <StepField
        label="You read"
        value={reading}
        min={-40}
        max={400}
        step={1}
        less="A degree less"
        more="A degree more"
        suffix="°C"
        onChange={(next) => {
          setReading(next)
          return null
        }}
      />
      <p role="status">{behindWords(reading, thermo)}</p>
    </div>
  )
}
