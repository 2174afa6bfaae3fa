import type { Family } from '../family.ts'

export const FRICTION: readonly Family[] = []
