/**
 * Every solid of one machine as plain arrays: nothing here needs the page, so that it can be worked out in another
 * thread and handed over.
 */
import { BufferAttribute, BufferGeometry } from 'three'
import { farSidePhase } from '../../sim/gear/wheel-motion.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { type Layout, machineLayout } from '../../sim/pose/layout.ts'
import type { PartName } from '../../sim/pose/parts.ts'
import type { TriangleMesh } from '../../sim/shape/triangle-mesh.ts'
import { wheelMesh } from '../../sim/shape/wheel-mesh.ts'
import { wormMesh } from '../../sim/shape/worm-mesh.ts'
import { bearingBody } from './body/bearings.ts'
import { brushHub } from './body/brush.ts'
import { caseEdges, clearWalls, closedCase } from './body/case.ts'
import { crankBody } from './body/crank.ts'
import { fanBody } from './body/fan.ts'
import { brushGearBody, motorBody } from './body/motor.ts'
import { wheelPointer, wormPointer } from './body/pointers.ts'
import { rotorBody } from './body/rotor.ts'
import { rotorVeil } from './body/rotor-veil.ts'
import { collarMark } from './body/collar-mark.ts'
import { trayBody } from './body/tray.ts'
import { wheelBody, wheelMarks } from './body/wheel.ts'
import type { Detail } from './detail.ts'
import { placed } from './solid.ts'

/** A solid as the graphics card takes it. */
export interface SolidArrays extends TriangleMesh {
  /** Number of the substance at each vertex; null where a material of its own colours all of it */
  readonly substances: Float32Array | null
}

export interface MachineShape {
  readonly layout: Layout
  readonly detail: Detail
  /** The plain solid of each part that this machine has. */
  readonly solids: ReadonlyMap<PartName, SolidArrays>
  /** Paint that turns with its part and can be left out. */
  readonly marks: ReadonlyMap<PartName, SolidArrays>
  /** Fixed pointers: of either wheel, with its tip at the origin, and of the worm, in the machine's frame. */
  readonly wheelPointer: SolidArrays
  readonly wormPointer: SolidArrays
  readonly wholeMotor: SolidArrays | null
  /** In place of what turns with the worm, when it is too fast. */
  readonly rotorVeil: SolidArrays
  readonly clearWalls: SolidArrays
  readonly caseEdges: SolidArrays
}

function arraysOf(geometry: BufferGeometry): SolidArrays {
  const floats = (name: string) => geometry.getAttribute(name).array as Float32Array
  return {
    positions: floats('position'),
    normals: floats('normal'),
    substances: geometry.hasAttribute('substance') ? floats('substance') : null,
    indices: geometry.index?.array as Uint32Array,
  }
}

function geometryOf(mesh: TriangleMesh): BufferGeometry {
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(mesh.positions, 3))
  geometry.setAttribute('normal', new BufferAttribute(mesh.normals, 3))
  return geometry.setIndex(new BufferAttribute(mesh.indices, 1))
}

function solidsOf(machine: Machine, layout: Layout, detail: Detail): Map<PartName, SolidArrays> {
  const { gearing } = machine
  const { shaft, motor, fan, crank } = layout
  const level = detail === 'high' ? 'display' : 'distant'
  const wheel = geometryOf(wheelMesh(gearing, level))
  const leftTeeth = wheel.clone().rotateY(farSidePhase(gearing.wormStarts, gearing.wheelTeeth))
  const hub = arraysOf(brushHub(layout, detail))
  const solids = new Map<PartName, SolidArrays>([
    ['leftBrush', hub],
    ['rightBrush', hub],
  ])
  const add = (part: PartName, geometry: BufferGeometry) => solids.set(part, arraysOf(geometry))
  add('rotor', rotorBody(layout, geometryOf(wormMesh(gearing, level)), detail))
  add('leftWheel', wheelBody(layout, leftTeeth, detail))
  add('rightWheel', wheelBody(layout, wheel, detail))
  const bearing = bearingBody(layout, detail)
  add('frontBearing', placed(bearing.clone(), { z: shaft.frontBearing }))
  add('rearBearing', placed(bearing, { z: shaft.rearBearing }))
  add('tray', trayBody(layout, detail))
  add('case', closedCase(layout, detail))
  if (motor !== null) {
    add('motor', motorBody(layout, motor, true, detail))
    add('brushGear', brushGearBody(motor, detail))
  }
  if (fan !== null) add('fan', fanBody(fan, shaft.radius, detail))
  if (crank !== null) add('crank', crankBody(crank, shaft.radius, detail))
  return solids
}

export function machineShape(machine: Machine, detail: Detail): MachineShape {
  const layout = machineLayout(machine)
  const { motor } = layout
  return {
    layout,
    detail,
    solids: solidsOf(machine, layout, detail),
    marks: new Map<PartName, SolidArrays>([
      ['rotor', arraysOf(collarMark(layout))],
      ['leftWheel', arraysOf(wheelMarks(layout, 'left', detail))],
      ['rightWheel', arraysOf(wheelMarks(layout, 'right', detail))],
    ]),
    wheelPointer: arraysOf(wheelPointer(layout)),
    wormPointer: arraysOf(wormPointer(layout)),
    wholeMotor: motor === null ? null : arraysOf(motorBody(layout, motor, false, detail)),
    rotorVeil: arraysOf(rotorVeil(layout, detail)),
    clearWalls: arraysOf(clearWalls(layout)),
    caseEdges: arraysOf(caseEdges(layout)),
  }
}

function everySolid(shape: MachineShape): readonly SolidArrays[] {
  const { wheelPointer: wheel, wormPointer: worm, wholeMotor, rotorVeil: veil } = shape
  const single = [wheel, worm, veil, shape.clearWalls, shape.caseEdges]
  return [...shape.solids.values(), ...shape.marks.values(), ...single, ...(wholeMotor ? [wholeMotor] : [])]
}

/** The memory that a shape lies in, each piece once, for handing it over instead of copying it. */
export function buffersOf(shape: MachineShape): ArrayBufferLike[] {
  const buffers = new Set<ArrayBufferLike>()
  for (const { positions, normals, substances, indices } of everySolid(shape)) {
    for (const array of [positions, normals, substances, indices]) if (array) buffers.add(array.buffer)
  }
  return [...buffers]
}
