import type { Family } from '../family.ts'

export const POWER: readonly Family[] = []
