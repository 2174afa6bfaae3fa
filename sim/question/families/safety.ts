import type { Family } from '../family.ts'

export const SAFETY: readonly Family[] = []
