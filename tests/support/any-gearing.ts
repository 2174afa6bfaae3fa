import fc from 'fast-check'
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { pairProportions } from '../../sim/gear/proportions.ts'

/** Any pair that the fields of a description can be set to, sound or not. */
export const anyGearing: fc.Arbitrary<GearNumbers> = fc
  .record({
    profile: fc.constantFrom('ZA', 'ZN', 'ZI', 'ZK'),
    hand: fc.constantFrom('right', 'left'),
    wheelForm: fc.constantFrom('throated', 'helical'),
    depthRule: fc.constantFrom('axial', 'normal', 'mixed'),
    thinned: fc.constantFrom('worm', 'wheel'),
    wormStarts: fc.integer({ min: 1, max: 8 }),
    wheelTeeth: fc.integer({ min: 8, max: 120 }),
    axialModule: fc.constantFrom(0.5, 2, 8),
    diameterQuotient: fc.double({ min: 5, max: 25, noNaN: true }),
    pressureAngle: fc.double({ min: 10, max: 30, noNaN: true }),
    friction: fc.constant(0.1),
    width: fc.double({ min: 1, max: 10, noNaN: true }),
    addendum: fc.double({ min: 0.3, max: 1.5, noNaN: true }),
    clearance: fc.double({ min: 0.05, max: 0.5, noNaN: true }),
    play: fc.double({ min: 0, max: 1, noNaN: true }),
    bore: fc.double({ min: 0.5, max: 40, noNaN: true }),
    disc: fc.double({ min: 3, max: 100, noNaN: true }),
    shift: fc.double({ min: -1.1, max: 1.1, noNaN: true }),
    given: fc.constantFrom('shift', 'distance'),
  })
  .map(({ width, play, bore, disc, shift, given, ...rest }) => {
    const m = rest.axialModule
    const gearing: GearNumbers = {
      ...rest,
      wheelWidth: Math.max(1, width * m),
      backlash: play * m,
      boreDiameter: bore * m,
      discDiameter: disc * m,
      centres: { kind: 'shift', profileShift: shift },
    }
    const { centreDistance } = pairProportions(gearing)
    return given === 'shift' ? gearing : { ...gearing, centres: { kind: 'distance', centreDistance } }
  })
