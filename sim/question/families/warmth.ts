import type { Family } from '../family.ts'

export const WARMTH: readonly Family[] = []
