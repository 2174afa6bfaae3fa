import { expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { whyUnsettled } from '../../web/demonstrate/unsettled.ts'
import { cordWinder } from '../support/machines.ts'

const free = {
  ...cordWinder,
  rotor: { ...cordWinder.rotor, frictionTorque: 0, viscousTorque: 0, fanTorque: 0 },
  outputs: {
    ...cordWinder.outputs,
    bearingTorque: 0,
    loads: [{ name: 'None', active: 0, passive: 0, linear: 0, quadratic: 0 }],
  },
}

test('a series motor that nothing holds back says why it runs away, once it is fast', () => {
  const drive = compileDrive(free)
  expect(whyUnsettled(drive, firstInput(), 3000)).toMatch(/gains speed without end/)
  expect(whyUnsettled(drive, firstInput(), 1000)).toBeNull()
  expect(whyUnsettled(compileDrive(cordWinder), firstInput(), 3000)).toBeNull()
})
