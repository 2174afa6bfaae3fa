/**
 * Heat that a surface gives to still or moving air. Source: F. P. Incropera and others, Fundamentals of Heat and Mass
 * Transfer, 6th ed., chapter 1.
 */

/** Stefan-Boltzmann constant [W/(m2 K4)], CODATA */
const STEFAN_BOLTZMANN = 5.670374419e-8
export const ZERO_CELSIUS = 273.15 // [K]

/** What a black body radiates [W/m2]; T in K. */
export const blackBodyPower = (T: number): number => STEFAN_BOLTZMANN * T ** 4

/**
 * Heat given by convection and radiation [W/m2]: h (Ts - Ta) + eps sigma (Ts^4 - Ta^4).
 *
 * h      - coefficient of heat transfer [W/(m2 K)]
 * eps    - emissivity, 0 to 1
 * Ts, Ta - surface and surroundings [K]
 */
export const surfaceHeatFlux = (h: number, eps: number, Ts: number, Ta: number): number =>
  h * (Ts - Ta) + eps * (blackBodyPower(Ts) - blackBodyPower(Ta))

/** Usual coefficients of heat transfer in air [W/(m2 K)]; Incropera, Table 1.1. */
export const FREE_CONVECTION = { least: 2, most: 25 } as const
export const FORCED_CONVECTION = { least: 25, most: 250 } as const

/** Coefficient that a conductance [W/K] asks of a surface [m2]: to be held against the usual ranges. */
export const transferCoefficient = (G: number, area: number): number => G / area
