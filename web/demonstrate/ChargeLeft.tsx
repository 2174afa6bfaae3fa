/** Unplugged, a smoothing capacitor stays charged: how much is left, and for how long. */
import { useStore } from 'zustand'
import {
  EXTRA_LOW_VOLTAGE,
  PLUG_PIN_LIMIT,
  bleedTime,
  capacitorEnergy,
} from '../../sim/heat/capacitor-bleed.ts'
import { type Workshop, useMachine, useWorkshop } from '../frame/workshop.ts'

const MICRO = 1e-6
const KILO = 1e3

const seconds = (time: number): string => (time >= 100 ? time.toFixed(0) : time.toPrecision(2))

interface Charge {
  /** [V] */
  readonly voltage: number
  /** It has not run since it was plugged in: no more than the crest of what charges it */
  readonly atMost: boolean
}

/** At rest it keeps what it had when the machine was stopped. */
function chargeOf({ frame }: Workshop, running: boolean, read: number): Charge {
  if (running) return { voltage: read, atMost: false }
  const kept = frame.state.capacitorVoltage
  if (kept > 0) return { voltage: kept, atMost: false }
  const circuit = frame.drive.circuits[frame.input.setting]
  return { voltage: Math.max(0, (circuit?.source.emf ?? 0) - (circuit?.diodeDrops ?? 0)), atMost: true }
}

/** The bleed resistor alone; a motor that still turns, or still draws, is faster. */
export function ChargeLeft() {
  const workshop = useWorkshop()
  const rectifier = useMachine((machine) => machine.rectifier)
  const running = useStore(workshop.readout, ({ motion }) => motion === 'running')
  const read = useStore(workshop.readout, ({ reading }) => reading.capacitorVoltage)
  const { voltage, atMost } = chargeOf(workshop, running, read)
  if (!rectifier || rectifier.capacitance === 0) return null
  const farads = rectifier.capacitance * MICRO
  const ohms = rectifier.bleedResistance * KILO
  const falls = (to: number): string =>
    voltage > to ? `${seconds(bleedTime(voltage, to, ohms, farads))} s to ${to} V` : `already below ${to} V`
  return (
    <section className="charge-left" aria-label="Charge that is left">
      <p>
        The capacitor holds {atMost && 'up to '}
        <span className="number">{voltage.toFixed(1)} V</span>,{' '}
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
