/**
 * Heat led away by a fan that turns with the shaft [W/K]: G = G0 + G1 (n/nRef)^p.
 *
 * G0   - at standstill [W/K]
 * G1   - what the fan adds at the reference speed [W/K]
 * n    - speed, its sense left out, in the unit of nRef
 * p    - 0.8 for turbulent forced convection, 0.5 for laminar (plates; from memory)
 */
export const fanConductance = (G0: number, G1: number, n: number, nRef: number, p: number): number =>
  G0 + (n === 0 ? 0 : G1 * (Math.abs(n) / nRef) ** p)

/** Heat capacity of air at constant pressure [J/(kg K)]; handbook value, from memory. */
const AIR_HEAT_CAPACITY = 1006

/**
 * Rise of the cooling air on its way through [K]: P/(rho cp Q).
 *
 * P   - heat that it takes up [W]
 * rho - density [kg/m3]
 * Q   - flow [m3/s], > 0; it goes with the speed
 */
export const coolingAirRise = (P: number, rho: number, Q: number, cp = AIR_HEAT_CAPACITY): number =>
  P / (rho * cp * Q)
