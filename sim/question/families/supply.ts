import type { Family } from '../family.ts'

export const SUPPLY: readonly Family[] = []
