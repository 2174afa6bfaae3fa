import type { Family } from '../family.ts'

export const THRUST: readonly Family[] = []
