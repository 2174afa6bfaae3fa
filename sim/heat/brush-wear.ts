/** Loss and wear of a pair of carbon brushes. */

/** Speed of the commutator's surface [m/s]; n in turn/s. */
export const slidingSpeed = (Dc: number, n: number): number => Math.PI * Dc * Math.abs(n)

/**
 * Heat of sliding [W]: count mu F v.
 *
 * mu - friction of carbon on the commutator
 * F  - force of one spring [N]
 * v  - sliding speed [m/s]
 */
export const brushFrictionLoss = (mu: number, F: number, v: number, count = 2): number => count * mu * F * v

/** Heat of the contact [W]: mean size of the current [A] times the drop of the pair [V]. */
export const brushContactLoss = (I: number, dU: number): number => Math.abs(I) * dU

/** How fast a brush wears without current, and what speed and current make of it. */
export interface WearLaw {
  /** Wear w0 at the speed v0 without current [mm/1000 h] */
  readonly wear: number
  /** v0 [m/s] */
  readonly speed: number
  /** I0 [A r.m.s.] */
  readonly current: number
  /** kappa: what I0 adds, over w0 */
  readonly byCurrent: number
}

/** Wear [mm/1000 h]: w0 (v/v0) (1 + kappa (I/I0)^2); every number of it is set by the user. */
export const brushWear = (law: WearLaw, v: number, I: number): number =>
  law.wear * (v / law.speed) * (1 + law.byCurrent * (I / law.current) ** 2)

const THOUSAND_HOURS = 1000

/** Life [h] of a usable length [mm] at a wear [mm/1000 h]; Infinity without wear. */
export const brushLife = (usable: number, wear: number): number => (THOUSAND_HOURS * usable) / wear

/** Usual lives [h]: of a small motor with magnets (a motor maker), and of a mains universal motor (from memory). */
export const USUAL_LIFE = {
  'permanent-magnet': { least: 2000, most: 5000 },
  universal: { least: 300, most: 1500 },
} as const

/** How a life stands to the usual one of its kind of motor. */
export function lifeAgainstUsual(
  hours: number,
  kind: keyof typeof USUAL_LIFE,
): 'shorter' | 'usual' | 'longer' {
  const { least, most } = USUAL_LIFE[kind]
  if (hours < least) return 'shorter'
  return hours > most ? 'longer' : 'usual'
}

/** Drop that loss calculations take for one brush [V]. Source: IEC 60034-2-1, from memory. */
export const ASSIGNED_DROP = { carbon: 1, metalCarbon: 0.3 } as const

/** Drop of a pair of carbon brushes in an old handbook [V]. Source: Hawkins Electrical Guide, vol. 2. */
export const HANDBOOK_PAIR_DROP = { least: 1.6, most: 2 } as const

/** Upper ends of the classes of contact drop, pair [V]; brush makers, from memory. */
export const DROP_CLASSES = { extremelyLow: 0.5, veryLow: 1.4, low: 2.3, medium: 3 } as const

/** Upper ends of the classes of brush friction, and what is usual. Source: article on life of brushes, Table 1. */
export const FRICTION_CLASSES = { veryLow: 0.1, low: 0.19, medium: 0.29 } as const
export const USUAL_FRICTION = { least: 0.13, most: 0.19 } as const

/** Life of brushes in a medium industrial machine [h]. Source: white paper on life of brushes. */
export const INDUSTRIAL_LIFE = { least: 2000, leastOfTheGood: 5000, usual: 7500, most: 10_000 } as const
