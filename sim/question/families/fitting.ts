import type { Family } from '../family.ts'

export const FITTING: readonly Family[] = []
