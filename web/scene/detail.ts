/** How finely round things are cut; the gears bring their own levels. */
export type Detail = 'low' | 'high'

/** Segments round a whole circle of a body of ordinary size. */
export const roundSegments = (detail: Detail): number => (detail === 'high' ? 56 : 26)
