import type { Family } from '../family.ts'

export const STROBE: readonly Family[] = []
