/**
 * One fan at another speed and in other air, flow patterns alike. Source: J. F. Douglas and others, Fluid Mechanics,
 * chapter on dynamic similarity of fans; lists of fan laws.
 */

/** What changes: speed and air density, each new over old, > 0. */
export interface FanChange {
  readonly speed: number
  readonly density: number
}

/** Flow Q goes with n. */
export const flowFactor = ({ speed }: FanChange): number => speed

/** Pressure rise goes with rho n^2. */
export const pressureFactor = ({ speed, density }: FanChange): number => density * speed ** 2

/** Torque goes with rho n^2. */
export const fanTorqueFactor = ({ speed, density }: FanChange): number => density * speed ** 2

/** Power goes with rho n^3. */
export const fanPowerFactor = ({ speed, density }: FanChange): number => density * speed ** 3

/** Change of speed at which a test in other air stands for this one: equal Reynolds numbers, one viscosity. */
export const similarSpeedFactor = (density: number): number => 1 / density

const AIR_CONSTANT = 287.05 // R of dry air [J/(kg K)]
const STANDARD_PRESSURE = 101_325 // [Pa]
const ZERO_CELSIUS = 273.15 // [K]

/**
 * Density of dry air rho = p/(R T) [kg/m3].
 *
 * temperature - [degC]
 * pressure    - [Pa]
 */
export const airDensity = (temperature: number, pressure = STANDARD_PRESSURE): number =>
  pressure / (AIR_CONSTANT * (temperature + ZERO_CELSIUS))
