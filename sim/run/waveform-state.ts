import { FREE } from '../electric/wave-network.ts'

/**
 * Components of a run's state after those of the network: how warm the fuse is, then integrals that nothing depends
 * on. Energies in joules since the start of the run; what a load gives back counts below zero.
 */
export const FUSE = FREE
/** Components on which rates depend */
export const COUPLED = FUSE + 1
/** Angle of the worm since whole turns were last taken out, in the supply's sense [rad] */
export const ANGLE = FUSE + 1
export const INPUT = ANGLE + 1
export const SOURCE_RESISTANCE = INPUT + 1
export const DIODES = INPUT + 2
export const SWITCH = INPUT + 3
export const FREEWHEEL = INPUT + 4
export const BLEED = INPUT + 5
export const COPPER = INPUT + 6
export const BRUSH = INPUT + 7
export const FRICTION = INPUT + 8
export const FAN = INPUT + 9
export const BEARINGS = INPUT + 10
export const LEFT_MESH = INPUT + 11
export const RIGHT_MESH = INPUT + 12
export const LEFT_OUTPUT = INPUT + 13
export const RIGHT_OUTPUT = INPUT + 14
/** In the arc of a contact that has to break a current without another way */
export const ARC = INPUT + 15
/** Gone into inductances, capacitor and turning masses */
export const STORED = INPUT + 16
/** Integrals for means over a period */
export const CURRENT_INTEGRAL = STORED + 1
export const CURRENT_SQUARE = STORED + 2
export const SOURCE_SQUARE = STORED + 3
export const TORQUE_INTEGRAL = STORED + 4
export const STATE_SIZE = STORED + 5

/** Losses and outputs: with what is stored they make up the input. */
export const SPENT = Array.from({ length: ARC - INPUT }, (_, n) => SOURCE_RESISTANCE + n)
