import { TIME } from '../numeric/dormand-prince.ts'
import type { WaveNetwork } from './wave-network.ts'
import { CAPACITOR, MOTOR, SOURCE, SPEED } from './wave-network.ts'

/** What one look at the network finds, in fields, so that nothing is allocated. */
export interface Look {
  /** Emf of the source, and a quarter of a period ahead, 0 for direct current [V]; in the present frame */
  emf: number
  quadrature: number
  /** Current through the source in the present frame [A], its rate [A/s] */
  source: number
  sourceRate: number
  /** Current from the socket, where a transformer stands between, once asked for [A] */
  line: number
  /** [A/s] */
  motorRate: number
  /** [V/s] */
  capacitorRate: number
  /** Emf of the motor [V] */
  motorEmf: number
  /** Torque of the motor [N m] */
  torque: number
  /** Differential inductance of the motor [H] */
  inductance: number
}

export const newLook = (): Look => ({
  emf: 0,
  quadrature: 0,
  source: 0,
  line: 0,
  sourceRate: 0,
  motorRate: 0,
  capacitorRate: 0,
  motorEmf: 0,
  torque: 0,
  inductance: 0,
})

/**
 * Winding at current i and speed w. Permanent magnet: E = k w, T = k i. Series: k(i) = k0/(1 + |i|/is), E = k i w, T =
 * k i^2, L(i) = Lc + Lf/(1 + |i|/is)^2, the derivative of the flux linkage, so that the stored energy is consistent;
 * Froelich's form of saturation, derived here. |i| is told as sense times i.
 */
function lookAtWinding(look: Look, network: WaveNetwork, y: Float64Array): void {
  const { motor } = network
  const i = y[MOTOR]!
  const w = y[SPEED]!
  if (!motor.isSeries) {
    look.motorEmf = motor.emfConstant * w
    look.torque = motor.emfConstant * i
    look.inductance = motor.inductance
    return
  }
  const flux = 1 / (1 + (network.sense * i) / motor.saturationCurrent)
  const k = motor.emfConstant * flux
  look.motorEmf = k * i * w
  look.torque = k * i * i
  look.inductance = motor.inductance + motor.fieldInductance * flux * flux
}

export function lookAtEmf(look: Look, network: WaveNetwork, y: Float64Array): void {
  const { emf, angularFrequency } = network.circuit.source
  look.emf = network.alternating ? emf * Math.sin(angularFrequency * (y[TIME]! - network.origin)) : emf
}

export function lookAtQuadrature(look: Look, network: WaveNetwork, y: Float64Array): void {
  const { emf, angularFrequency } = network.circuit.source
  look.quadrature = network.alternating ? emf * Math.cos(angularFrequency * (y[TIME]! - network.origin)) : 0
}

/** Evaluates the equations of `Loops` at state y. */
export function lookAt(look: Look, network: WaveNetwork, y: Float64Array): void {
  const { loops, turn, sourceResistance, sourceInductance, circuit } = network
  const i = y[MOTOR]!
  const v = y[CAPACITOR]!
  lookAtEmf(look, network, y)
  lookAtWinding(look, network, y)
  const e = look.emf
  look.motorRate = 0
  if (network.sense !== 0) {
    const inLoop = loops.series * loops.series
    const drops = loops.brush + loops.diode + loops.triac + loops.switched + loops.freewheel
    const resistance = network.motor.resistance + inLoop * sourceResistance
    const voltage = loops.series * e + loops.tapped * v - drops - resistance * i - look.motorEmf
    look.motorRate = voltage / (look.inductance + inLoop * sourceInductance)
  }
  look.source = loops.series * i
  look.sourceRate = loops.series * look.motorRate
  if (loops.apart === 1) {
    const driving = e - turn * (loops.ownDiode + loops.ownTriac + loops.intoCapacitor * v)
    if (sourceInductance > 0) {
      look.source = y[SOURCE]!
      look.sourceRate = (driving - sourceResistance * look.source) / sourceInductance
    } else look.source = driving / sourceResistance
  }
  look.capacitorRate = 0
  if (loops.charged === 1) {
    const current = loops.intoCapacitor * turn * look.source - loops.tapped * i - v / circuit.bleedResistance
    look.capacitorRate = current / circuit.capacitance
  }
}

/** Writes the rates of the network's own components from a look. */
export function writeNetworkRates(rates: Float64Array, look: Look): void {
  rates[TIME] = 1
  rates[MOTOR] = look.motorRate
  rates[SOURCE] = look.sourceRate
  rates[CAPACITOR] = look.capacitorRate
}
