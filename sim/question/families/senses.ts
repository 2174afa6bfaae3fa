import type { Family } from '../family.ts'

export const SENSES: readonly Family[] = []
