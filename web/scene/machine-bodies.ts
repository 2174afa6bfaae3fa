/** All geometry of one machine, made once and let go with it. */
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
import { joined } from './solid.ts'

export interface MachineBodies {
  readonly machine: Machine
  readonly layout: Layout
  readonly detail: Detail
  /** The plain solid of each part that this machine has. */
  readonly solids: ReadonlyMap<PartName, BufferGeometry>
  /** Paint that turns with its part and can be left out. */
  readonly marks: ReadonlyMap<PartName, BufferGeometry>
  /** Fixed pointers: of either wheel, with its tip at the origin, and of the worm, in the machine's frame. */
  readonly wheelPointer: BufferGeometry
  readonly wormPointer: BufferGeometry
  readonly wholeMotor: BufferGeometry | null
  /** In place of what turns with the worm, when it is too fast. */
  readonly rotorVeil: BufferGeometry
  readonly clearWalls: BufferGeometry
  readonly caseEdges: BufferGeometry
}

function bufferGeometry(mesh: TriangleMesh): BufferGeometry {
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(mesh.positions, 3))
  geometry.setAttribute('normal', new BufferAttribute(mesh.normals, 3))
  return geometry.setIndex(new BufferAttribute(mesh.indices, 1))
}

function solidsOf(machine: Machine, layout: Layout, detail: Detail): Map<PartName, BufferGeometry> {
  const { gearing } = machine
  const { shaft, motor, fan, crank } = layout
  const level = detail === 'high' ? 'display' : 'distant'
  const wheel = bufferGeometry(wheelMesh(gearing, level))
  const leftTeeth = wheel.clone().rotateY(farSidePhase(gearing.wormStarts, gearing.wheelTeeth))
  const hub = brushHub(layout, detail)
  const solids = new Map<PartName, BufferGeometry>([
    ['rotor', rotorBody(layout, bufferGeometry(wormMesh(gearing, level)), detail)],
    ['leftWheel', wheelBody(layout, leftTeeth, detail)],
    ['rightWheel', wheelBody(layout, wheel, detail)],
    ['frontBearing', bearingBody(layout, shaft.frontBearing, detail)],
    ['rearBearing', bearingBody(layout, shaft.rearBearing, detail)],
    ['tray', trayBody(layout, detail)],
    ['case', closedCase(layout, detail)],
    ['leftBrush', hub],
    ['rightBrush', hub],
  ])
  if (motor !== null) {
    solids.set('motor', motorBody(layout, motor, true, detail))
    solids.set('brushGear', brushGearBody(motor, detail))
  }
  if (fan !== null) solids.set('fan', fanBody(fan, shaft.radius, detail))
  if (crank !== null) solids.set('crank', crankBody(crank, shaft.radius, detail))
  return solids
}

export function machineBodies(machine: Machine, detail: Detail): MachineBodies {
  const layout = machineLayout(machine)
  return {
    machine,
    layout,
    detail,
    solids: solidsOf(machine, layout, detail),
    marks: new Map<PartName, BufferGeometry>([
      ['rotor', collarMark(layout)],
      ['leftWheel', wheelMarks(layout, 'left', detail)],
      ['rightWheel', wheelMarks(layout, 'right', detail)],
    ]),
    wheelPointer: wheelPointer(layout),
    wormPointer: wormPointer(layout),
    wholeMotor: layout.motor === null ? null : motorBody(layout, layout.motor, false, detail),
    rotorVeil: rotorVeil(layout, detail),
    clearWalls: clearWalls(layout),
    caseEdges: joined(caseEdges(layout)),
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
