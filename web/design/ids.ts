/** Elements that a list of problems can lead to. */
import type { SectionName } from '../../sim/machine/field.ts'

export const fieldId = (path: string): string => `field-${path}`
export const sectionId = (section: SectionName): string => `section-${section}`
