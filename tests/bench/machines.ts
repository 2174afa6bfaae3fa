/** The demo machines, bundled with what measures them. */
import bootCleanerJson from '../../assets/machines/boot-cleaner.json' with { type: 'json' }
import classroomModelJson from '../../assets/machines/classroom-model.json' with { type: 'json' }
import cordWinderJson from '../../assets/machines/cord-winder.json' with { type: 'json' }
import ventOpenerJson from '../../assets/machines/vent-opener.json' with { type: 'json' }
import type { Machine } from '../../sim/machine/machine.ts'

export const bootCleaner = bootCleanerJson as Machine
export const ventOpener = ventOpenerJson as Machine
export const cordWinder = cordWinderJson as Machine
export const classroomModel = classroomModelJson as Machine

const { rectifier } = bootCleaner
if (!rectifier) throw new Error('the boot cleaner has no rectifier')
/** The boot cleaner with 2200 uF across its bridge */
export const smoothed: Machine = { ...bootCleaner, rectifier: { ...rectifier, capacitance: 2200 } }
