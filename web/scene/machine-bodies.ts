/** All geometry of one machine as the scene draws it, made once and let go with it. */
import { BufferAttribute, BufferGeometry } from 'three'
import type { Machine } from '../../sim/machine/machine.ts'
import type { Layout } from '../../sim/pose/layout.ts'
import type { PartName } from '../../sim/pose/parts.ts'
import type { Detail } from './detail.ts'
import type { MachineShape, SolidArrays } from './machine-shape.ts'

/** The solids of machine-shape.ts under the same names. */
export interface MachineBodies {
  readonly machine: Machine
  readonly layout: Layout
  readonly detail: Detail
  readonly solids: ReadonlyMap<PartName, BufferGeometry>
  readonly marks: ReadonlyMap<PartName, BufferGeometry>
  readonly wheelPointer: BufferGeometry
  readonly wormPointer: BufferGeometry
  readonly wholeMotor: BufferGeometry | null
  readonly rotorVeil: BufferGeometry
  readonly clearWalls: BufferGeometry
  readonly caseEdges: BufferGeometry
}

/** Wraps the arrays without copying them. */
function geometryOf({ positions, normals, substances, indices }: SolidArrays): BufferGeometry {
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(positions, 3))
  geometry.setAttribute('normal', new BufferAttribute(normals, 3))
  if (substances !== null) geometry.setAttribute('substance', new BufferAttribute(substances, 1))
  return geometry.setIndex(new BufferAttribute(indices, 1))
}

/** Parts that share their arrays share the geometry too. */
function geometriesOf(solids: ReadonlyMap<PartName, SolidArrays>): Map<PartName, BufferGeometry> {
  const made = new Map<SolidArrays, BufferGeometry>()
  for (const solid of solids.values()) if (!made.has(solid)) made.set(solid, geometryOf(solid))
  return new Map([...solids].map(([name, solid]) => [name, made.get(solid)!]))
}

export function machineBodies(machine: Machine, shape: MachineShape): MachineBodies {
  return {
    machine,
    layout: shape.layout,
    detail: shape.detail,
    solids: geometriesOf(shape.solids),
    marks: geometriesOf(shape.marks),
    wheelPointer: geometryOf(shape.wheelPointer),
    wormPointer: geometryOf(shape.wormPointer),
    wholeMotor: shape.wholeMotor && geometryOf(shape.wholeMotor),
    rotorVeil: geometryOf(shape.rotorVeil),
    clearWalls: geometryOf(shape.clearWalls),
    caseEdges: geometryOf(shape.caseEdges),
  }
}

export function disposeBodies(bodies: MachineBodies): void {
  for (const map of [bodies.solids, bodies.marks]) for (const geometry of map.values()) geometry.dispose()
  bodies.wheelPointer.dispose()
  bodies.wormPointer.dispose()
  bodies.wholeMotor?.dispose()
  bodies.rotorVeil.dispose()
  bodies.clearWalls.dispose()
  bodies.caseEdges.dispose()
}
