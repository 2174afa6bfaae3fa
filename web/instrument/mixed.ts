/** z2/z1 as a whole number and a fraction in lowest terms. */
export interface MixedTurns {
  readonly whole: number
  readonly top: number
  readonly bottom: number
}

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b))

export function mixedTurns(z2: number, z1: number): MixedTurns {
  const whole = Math.floor(z2 / z1)
  const rest = z2 - whole * z1
  const common = commonDivisor(rest, z1)
  return { whole, top: rest / common, bottom: z1 / common }
}

/** "10 1/3", "13 1/2", "20" */
export function mixedText({ whole, top, bottom }: MixedTurns): string {
  if (top === 0) return String(whole)
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`
}
