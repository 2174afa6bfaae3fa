import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { newReading, readState } from '../../sim/drive/reading.ts'
import { restState } from '../../sim/drive/state.ts'
import { step } from '../../sim/drive/step.ts'
import { wholeRangeRun } from '../support/whole-ranges.ts'

const SEED = 20_261_125
let n=0, nul=0, stood=0, bad=0, slow=0
describe(`over the whole ranges of the field table, seed ${SEED}`, () => {
  test('a run ends where the drive settles, to 1e-4 of its speed', () => {
    const t0=Date.now()
    fc.assert(
      fc.property(wholeRangeRun, ([machine, input]) => {
        const drive = compileDrive(machine)
        const point = operatingPoint(drive, input)
        n++
        if (point === null) {nul++; return}
        if (point.speed===0) stood++
        const state = restState()
        const off = () => Math.abs(state.speed - point.speed)
        let k=0
        for (; k < 1200 && off()>1e-4*Math.abs(point.speed); k++) step(state, drive, input, 1 / 240)
        if (off()>1e-4*Math.abs(point.speed)) { slow++
        let dt = 1/240
        for (; k < 1200+400 && off()>1e-4*Math.abs(point.speed); k++) step(state, drive, input, dt*=1.1) }
        if (off() > 1e-4 * Math.abs(point.speed)) { bad++
          if (bad<8) console.log(state.speed, point.speed, state.acceleration, JSON.stringify({ s:machine.supply,c:machine.control,m:machine.motor,r:machine.rotor,g:machine.gearing,o:machine.outputs}), JSON.stringify(input)) }
        const out = readState(newReading(), drive, input, state)
        for (const [k,v] of Object.entries(out)) if(!Number.isFinite(v)) console.log('NAN',k)
      }),
      { seed: SEED, numRuns: 2000 },
    )
    console.log({n,nul,stood,bad,slow}, Date.now()-t0)
  }, 300000)
})
