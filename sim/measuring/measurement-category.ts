/** Where a meter and its leads may be used, by the surges that are to be expected. IEC 61010-2-030, from memory. */
export interface MeasurementCategory {
  readonly name: 'CAT II' | 'CAT III' | 'CAT IV'
  readonly place: string
}

export const MEASUREMENT_CATEGORIES: readonly MeasurementCategory[] = [
  { name: 'CAT II', place: 'Sockets and what is plugged into them' },
  { name: 'CAT III', place: 'Fixed wiring of a building' },
  { name: 'CAT IV', place: 'Where the supply enters the building' },
]
