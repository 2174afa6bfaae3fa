/** The symbols of motor and current. */
import type { Machine, UniversalMotor } from '../../sim/machine/machine.ts'
import { motorEmf, warmResistance } from './motor-state.ts'
import type { Situation } from './situation.ts'
import { type Of, type SymbolRow, law, read, set } from './symbol-row.ts'

const ofSeries = ({ motor }: Machine, of: Of<UniversalMotor>): number =>
  motor?.kind === 'universal' ? of(motor) : 0

const ofBench = (letter: string, words: string, value: Of<Situation>): SymbolRow => ({
  ...read(letter, words, '°C', value),
  origin: 'set',
})

const CONSTANTS = {
  k: set('k', 'motor constant', 'V s/rad', ({ motor }) => motor?.emfConstant ?? 0),
  k0: set('k_0', 'motor constant at small current', 'V s/(rad A)', ({ motor }) => motor?.emfConstant ?? 0),
  isat: set('i_sat', 'saturation current', 'A', (machine) =>
    ofSeries(machine, ({ saturationCurrent }) => saturationCurrent),
  ),
  aB: set('a_B', 'change of the magnets’ flux', '%/K', ({ thermal }) => thermal?.magnetCoefficient ?? 0),
  Ra: set('R_20', 'resistance of the motor at 20 °C', 'Ω', ({ motor }) => motor?.resistance ?? 0),
  Rwarm: read('R', 'resistance of the motor, as warm as it is', 'Ω', warmResistance),
  vb: set('v_b', 'drop of both brushes', 'V', ({ motor }) => motor?.brushDrop ?? 0),
  warmth: ofBench('ϑ_w', 'temperature of the winding', ({ winding }) => winding),
  magnets: ofBench('ϑ_m', 'temperature of the magnets', ({ magnet }) => magnet),
} satisfies Record<string, SymbolRow>

const SWITCHES = {
  Vd: set('V_d', 'drop of one diode', 'V', ({ rectifier, control }) =>
    control.kind === 'half-wave' ? control.diodeDrop : (rectifier?.diodeDrop ?? 0),
  ),
  VT: set('V_T', 'drop of the triac', 'V', ({ control }) =>
    control.kind === 'phase' ? control.switchDrop : 0,
  ),
  Vsw: set('V_sw', 'drop of the switch', 'V', ({ control }) =>
    control.kind === 'chopper' ? control.switchDrop : 0,
  ),
  Vf: set('V_f', 'drop of the freewheel diode', 'V', ({ control }) =>
    control.kind === 'chopper' ? control.freewheelDrop : 0,
  ),
  duty: {
    ...read('D', 'part of the time with the switch closed', '%', ({ machine: { control }, setting }) =>
      control.kind === 'chopper' ? (control.steps[setting]?.duty ?? 0) : 0,
    ),
    origin: 'set',
  },
  Rb: set('R_b', 'bleed resistor', 'Ω', ({ rectifier }) => 1000 * (rectifier?.bleedResistance ?? 0)),
} satisfies Record<string, SymbolRow>

/** As the secondary feels it, behind a transformer. */
function sourceResistance({ supply, control, transformer }: Machine, setting: number): number {
  const line = supply.kind === 'crank' ? 0 : supply.resistance
  const tap = control.kind === 'taps' ? control.steps[setting] : undefined
  if (!tap || !transformer) return line
  return tap.resistance + line * (tap.voltage / transformer.primaryVoltage) ** 2
}

export const MOTOR_SYMBOLS = {
  ...CONSTANTS,
  ...SWITCHES,
  I: read('I', 'mean motor current', 'A', ({ reading }) => reading.currentMean),
  Irms: read('I_eff', 'effective motor current', 'A', ({ reading }) => reading.currentRms),
  Iin: read('I_in', 'current taken from the supply', 'A', ({ reading }) => reading.wallCurrent),
  i: law('i', 'motor current at one instant', 'A'),
  is: law('i_s', 'current out of the source at one instant', 'A'),
  u: law('u', 'voltage offered at that instant, after diodes or switch', 'V'),
  vC: law('v', 'voltage of the capacitor at one instant', 'V'),
  VC: read('V_C', 'mean voltage of the capacitor', 'V', ({ reading }) => reading.capacitorVoltage),
  V: set('V', 'voltage of the supply', 'V', ({ supply }) => (supply.kind === 'crank' ? 0 : supply.voltage)),
  RFe: set(
    'R_Fe',
    'core loss resistance',
    'Ω',
    ({ transformer }) => 1000 * (transformer?.coreResistance ?? 0),
  ),
  e: read('E', 'emf of the motor', 'V', (situation) =>
    situation.machine.motor?.kind === 'universal' ? Number.NaN : motorEmf(situation),
  ),
  Rs: {
    ...read('R_s', 'resistance of line, tap or battery', 'Ω', ({ machine, setting }) =>
      sourceResistance(machine, setting),
    ),
    origin: 'set',
  },
  Tm: read('T_m', 'motor torque', 'N m', ({ reading }) => reading.motorTorque),
  Tc: set('T_c', 'constant friction', 'N m', ({ rotor }) => rotor.frictionTorque),
  bv: set('b_v', 'viscous friction', 'N m s/rad', ({ rotor }) => rotor.viscousTorque),
  cf: set('c_f', 'fan and windage', 'N m s²/rad²', ({ rotor }) => rotor.fanTorque),
} satisfies Record<string, SymbolRow>
