/** Winding and magnets as they grow warm. Temperatures in degC. */

/** -T at which the resistance of copper, followed as a straight line, would be nothing [K]; aluminium 228. */
export const COPPER_CONSTANT = 234.5
/** Temperature at which a machine's description tells resistance and emf constant [degC] */
export const REFERENCE_TEMPERATURE = 20

/**
 * Resistance over that at the reference temperature: (k + T)/(k + 20).
 *
 * T - [degC], > -k
 *
 * Source: IEC 60028 for copper, k = 234.5.
 */
export const resistanceFactor = (T: number, k = COPPER_CONSTANT): number =>
  (k + T) / (k + REFERENCE_TEMPERATURE)

/** Coefficient of resistance at T [1/K]: 1/(k + T). The 0.00393 of copper belongs to 20 degC only. */
export const temperatureCoefficient = (T: number, k = COPPER_CONSTANT): number => 1 / (k + T)

/**
 * Flux of a magnet over that at the reference temperature: 1 + a (T - 20), not below 0.
 *
 * a - coefficient [1/K], about -0.002 for ferrite (from memory)
 * T - [degC]
 */
export const magnetFactor = (a: number, T: number): number => Math.max(0, 1 + a * (T - REFERENCE_TEMPERATURE))

/**
 * Rise of a winding above the air by its resistance [K]: (R2 - R1)/R1 (k + t1) - (t2 - t1).
 *
 * R1, R2 - cold and warm [ohm], R1 > 0
 * t1, t2 - air at the cold and at the warm reading [degC]
 *
 * Source: IEC 60335-1, clause 11; IEC 60034-1 takes k = 235.
 */
export const riseByResistance = (
  R1: number,
  R2: number,
  t1: number,
  t2: number,
  k = COPPER_CONSTANT,
): number => ((R2 - R1) / R1) * (k + t1) - (t2 - t1)

/** The constant k of a winding from its resistance at two temperatures [K]. */
export const constantFromReadings = (R1: number, t1: number, R2: number, t2: number): number =>
  (R1 * t2 - R2 * t1) / (R2 - R1)
