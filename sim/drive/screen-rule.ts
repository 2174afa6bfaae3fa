/**
 * Rate at which something with `symmetry` equal marks seems to turn when it is drawn displayHertz times a
 * second.
 *
 * rate         - true rate, signed, in turns a second
 * symmetry     - equal marks around a turn, >= 1
 * displayHertz - pictures a second, > 0
 *
 * Sampling folds the rate of mark passages into half the display's rate either way: n - f round(n/f), as in
 * stroboscope practice.
 */
export function apparentRate(rate: number, symmetry: number, displayHertz: number): number {
  const passages = rate * symmetry
  return (passages - displayHertz * Math.round(passages / displayHertz)) / symmetry
}

/** Part of the sampling limit up to which a picture still reads as motion without doubt. Our choice. */
const SAFE_PART = 0.8

/** Whether marks may be drawn as they stand: passages below 0.8 of half the display's rate. */
export const drawnTruly = (rate: number, symmetry: number, displayHertz: number): boolean =>
  Math.abs(rate) * symmetry <= (SAFE_PART * displayHertz) / 2
