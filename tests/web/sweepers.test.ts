import { Matrix4, MeshBasicMaterial, Vector3 } from 'three'
import { expect, test } from 'vitest'
import type { Machine } from '../../sim/machine/machine.ts'
import { machineLayout } from '../../sim/pose/layout.ts'
import { sweepers } from '../../web/scene/body/brush.ts'
import { bootCleaner, classroomModel, demoMachines } from '../support/machines.ts'
import { near } from '../support/near.ts'

/** Every corner of every bristle or blade, as it stands on the output. */
function cornersOf(machine: Machine, firstRow: number, detail: 'low' | 'high'): Vector3[] {
  const mesh = sweepers(machineLayout(machine), firstRow, new MeshBasicMaterial(), detail)
  const position = mesh.geometry.getAttribute('position')
  const matrix = new Matrix4()
  return Array.from({ length: mesh.count * position.count }, (_, n) => {
    mesh.getMatrixAt(Math.floor(n / position.count), matrix)
    return new Vector3().fromBufferAttribute(position, n % position.count).applyMatrix4(matrix)
  })
}

const cases = demoMachines.flatMap((machine) =>
  (['low', 'high'] as const).map((detail) => [machine.name, detail, machine] as const),
)

test.each(cases)(
  '%s, %s detail: rows keep to their thickness, from the hub to the sweep',
  (_, detail, machine) => {
    const { output } = machineLayout(machine)
    const firstRow = 0.4
    // single precision, and tips that are a little thicker than their own line
    const allowed = 0.012 * output.brushRadius
    let furthest = 0
    for (const { x, y, z } of cornersOf(machine, firstRow, detail)) {
      const across = Array.from({ length: output.tufts }, (_row, row) => {
        const chi = firstRow + (row * 2 * Math.PI) / output.tufts
        const along = -x * Math.cos(chi) + z * Math.sin(chi)
        return along > 0 ? Math.abs(x * Math.sin(chi) + z * Math.cos(chi)) : Infinity
      })
      expect(Math.min(...across)).toBeLessThanOrEqual(output.tuftThickness / 2 + 0.25 * output.tuftThickness)
      furthest = Math.max(furthest, Math.hypot(x, z))
      expect(Math.abs(y)).toBeLessThanOrEqual(0.55 * output.brushHeight)
    }
    expect(furthest).toBeLessThanOrEqual(output.brushRadius + allowed)
    expect(furthest).toBeGreaterThan(0.96 * output.brushRadius)
  },
)

test('the first row points where the layout says, for bristles and for blades', () => {
  for (const machine of [bootCleaner, classroomModel]) {
    const { output } = machineLayout(machine)
    const corners = cornersOf(machine, 0.3, 'low')
    const first = corners.slice(0, corners.length / output.tufts)
    const middle = first.reduce((sum, corner) => sum.add(corner), new Vector3()).divideScalar(first.length)
    near(Math.atan2(middle.z, -middle.x), 0.3, 0.01)
  }
})
