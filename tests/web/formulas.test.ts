import { expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { symbolsOf, worth } from '../../web/instrument/formula-tree.ts'
import { FORMULAS, type FormulaId, formulaValue, outcome } from '../../web/instrument/formulas.ts'
import { type Situation, situationOf } from '../../web/instrument/situation.ts'
import { firstBench } from '../../web/store/bench.ts'
import { bootCleaner, classroomModel, ventOpener } from '../support/machines.ts'

function running(machine: Machine, setting: number, leftLoad: number, rightLoad: number): Situation {
  const point = operatingPoint(compileDrive(machine), { ...firstInput(), setting, leftLoad, rightLoad })
  if (!point) throw new Error('this machine is computed')
  return situationOf(machine, { ...firstBench, setting, leftLoad, rightLoad }, point.reading)
}

const situations: [string, Situation][] = [
  ['A, setting 1, light', running(bootCleaner, 0, 0, 0)],
  ['A, setting 5, one wheel loaded', running(bootCleaner, 4, 1, 0)],
  ['B, setting 4, opening', running(ventOpener, 3, 0, 0)],
  ['D, cranked', running(classroomModel, 0, 0, 0)],
]

/** Formulas of parts that a machine does not have say nothing of it. */
function belongs(id: FormulaId, { motor, rectifier, transformer, rotor }: Machine): boolean {
  if (id === 'crankTorque') return motor === null
  if (id === 'diodeLoss') return rectifier !== null
  if (id === 'coreLoss') return transformer !== null
  if (id === 'fanLoss') return rotor.fanTorque > 0
  return motor !== null || !['motorTorque', 'copperLoss', 'brushLoss'].includes(id)
}

const compared = (Object.keys(FORMULAS) as FormulaId[]).filter(
  (id) => FORMULAS[id].reading && !FORMULAS[id].lawOnly,
)

test('more than a dozen formulas have a reading to be compared with', () => {
  expect(compared.length).toBeGreaterThan(12)
})

test.each(situations)('every formula gives what the drive itself computes: %s', (_name, situation) => {
  for (const id of compared.filter((each) => belongs(each, situation.machine))) {
    const own = formulaValue(id, situation)
    const read = FORMULAS[id].reading!(situation)
    expect(read, id).not.toBe(0)
    expect(Math.abs(own - read) / Math.abs(read), id).toBeLessThan(1e-9)
  }
})

test.each(situations)('no formula and no symbol of it is NaN while it turns: %s', (_name, situation) => {
  for (const id of Object.keys(FORMULAS) as FormulaId[]) {
    if (belongs(id, situation.machine)) expect(outcome(id, situation).value, id).not.toBeNaN()
  }
})

test('where a formula does not hold, the reading stands and says so', () => {
  const [, situation] = situations[0]!
  const reading = { ...situation.reading, leftTorque: 0.02, wormSpeed: 0 }
  expect(outcome('leftTorque', { ...situation, reading })).toEqual({ value: 0.02, byFormula: false })
})

test.each(situations)('the forces in a mesh carry its torque and lose its share: %s', (_name, situation) => {
  const { machine, reading } = situation
  const { axialModule, diameterQuotient, wheelTeeth, wormStarts, pressureAngle } = machine.gearing
  const [r1, r2] = [(axialModule * diameterQuotient) / 2000, (axialModule * wheelTeeth) / 2000]
  const axial = formulaValue('leftAxialForce', situation)
  const tangential = formulaValue('leftTangentialForce', situation)
  const radial = formulaValue('leftRadialForce', situation)
  const forward = formulaValue('meshEfficiency', situation) / 100
  expect(axial * r2).toBeCloseTo(reading.meshTorqueLeft, 12)
  expect((tangential * r1 * wheelTeeth * forward) / wormStarts).toBeCloseTo(reading.meshTorqueLeft, 12)
  const normal = radial / Math.sin((pressureAngle * Math.PI) / 180)
  const friction = machine.gearing.friction * normal
  expect(axial ** 2 + tangential ** 2 + radial ** 2).toBeCloseTo(normal ** 2 + friction ** 2, 9)
})

test('a formula names each of its symbols once', () => {
  expect(symbolsOf(FORMULAS.meshEfficiency.right)).toEqual(['alphaN', 'mu', 'gamma'])
})

test('a tree is worth what its operations say', () => {
  expect(worth(FORMULAS.lead.right, (name) => ({ z1: 2, m: 3 })[name as 'z1' | 'm'])).toBeCloseTo(
    6 * Math.PI,
    12,
  )
})
