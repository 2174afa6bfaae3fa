import type { Family } from '../family.ts'

export const SPEED: readonly Family[] = []
