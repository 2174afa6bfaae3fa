/** One scale of tone for temperature: even steps of lightness, towards ink on a light ground and towards light on a dark one. */
import type { Theme } from './substances.ts'

/** Lightness L* at the cool and at the hot end of the scale */
const ENDS: Readonly<Record<Theme, readonly [number, number]>> = { light: [92, 18], dark: [38, 98] }

const LINEAR_END = 8 // below this L* the law is a straight line
const KAPPA = 903.3 // CIE 1976

/** Share of white's luminance at a lightness L*, 0 to 100. Source: CIE 15, CIELAB, solved for Y. */
export const luminanceAt = (lightness: number): number =>
  lightness > LINEAR_END ? ((lightness + 16) / 116) ** 3 : lightness / KAPPA

/** Where a temperature lies on a scale, 0 to 1; beyond its ends it stays there. */
export const heatLevelOn = (T: number, from: number, to: number): number =>
  Math.min(1, Math.max(0, (T - from) / (to - from)))

/** Linear light of the grey for a level, 0 to 1 */
export function heatTone(level: number, theme: Theme): number {
  const [cool, hot] = ENDS[theme]
  return luminanceAt(cool + level * (hot - cool))
}

/** The same as the standard's encoded value, 0 to 1. Source: IEC 61966-2-1. */
export function encodedTone(level: number, theme: Theme): number {
  const Y = heatTone(level, theme)
  return Y <= 0.0031308 ? 12.92 * Y : 1.055 * Y ** (1 / 2.4) - 0.055
}
