import type { Family } from '../family.ts'

export const TORQUE: readonly Family[] = []
