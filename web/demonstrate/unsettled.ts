/** Why a machine runs away, once it does. */
import type { Drive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import { radPerSecond } from '../../sim/quantity/convert.ts'
import { settlingNow } from '../frame/steady.ts'

/** Below this worm speed nothing is asked, since asking takes a while for some chains. Our choice. [r/min] */
const FAST = 20_000

/** A sentence, or null where the machine settles or is not that fast yet; worm speed in rad/s. */
export const whyUnsettled = (drive: Drive, input: DriveInput, speed: number): string | null =>
  Math.abs(speed) > radPerSecond(FAST) ? settlingNow(drive, input).reason : null
