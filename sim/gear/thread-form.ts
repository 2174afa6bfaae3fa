/** A thread as one function of radius: see thread-profile.ts. */
export interface ThreadForm {
  /** Smallest radius [mm] at which the flank exists; below it the thread is as thick as there. */
  readonly leastRadius: number
  /** Largest radius [mm] at which it can be made; beyond it the thread goes on straight. */
  readonly greatestRadius: number
  readonly halfThickness: (r: number) => number
  /** dh/dr, negative where the thread thins outwards */
  readonly slope: (r: number) => number
}
