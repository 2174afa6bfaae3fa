/** Unplugged, a smoothing capacitor stays charged: how much is left, and for how long. */
import { useStore } from 'zustand'
import {
  EXTRA_LOW_VOLTAGE,
  PLUG_PIN_LIMIT,
  bleedTime,
  capacitorEnergy,
} from '../../sim/heat/capacitor-bleed.ts'
import { useMachine, useWorkshop } from '../frame/workshop.ts'

const MICRO = 1e-6
const KILO = 1e3

const seconds = (time: number): string => (time >= 100 ? time.toFixed(0) : time.toPrecision(2))

/** The bleed resistor alone; a motor that still turns, or still draws, is faster. */
export function ChargeLeft() {
  const workshop = useWorkshop()
  const rectifier = useMachine((machine) => machine.rectifier)
  const voltage = useStore(workshop.readout, ({ reading }) => reading.capacitorVoltage)
  if (!rectifier || rectifier.capacitance === 0) return null
  const farads = rectifier.capacitance * MICRO
  const ohms = rectifier.bleedResistance * KILO
  const falls = (to: number): string =>
    voltage > to ? `${seconds(bleedTime(voltage, to, ohms, farads))} s to ${to} V` : `already below ${to} V`
  return (
    <section className="charge-left" aria-label="Charge that is left">
      <p>
        The capacitor holds <span className="number">{voltage.toFixed(1)} V</span>,{' '}
        <span className="number">{capacitorEnergy(farads, voltage).toPrecision(2)} J</span>. Through its bleed
        resistor alone: {falls(EXTRA_LOW_VOLTAGE)}, {falls(PLUG_PIN_LIMIT)}.
      </p>
      <p className="small">
        Stored charge outlives the plug. Wait, then measure that it is gone before you touch anything; local
        rules come first, and repairs belong to licensed people.
      </p>
    </section>
  )
}
