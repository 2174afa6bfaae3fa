/**
 * The machine as it stands on the stage, as binary glTF 2.0, whose unit is the metre and whose y is up. Every part is
 * a node with its name, where the stage has it now; each substance is a plain material.
 */
import {
  BufferAttribute,
  BufferGeometry,
  Color,
  Group,
  type InstancedMesh,
  type Material,
  Matrix4,
  Mesh,
  MeshBasicMaterial,
  MeshStandardMaterial,
} from 'three'
import { GLTFExporter } from 'three/examples/jsm/exporters/GLTFExporter.js'
import type { Play } from '../../sim/drive/play.ts'
import type { WormTurns } from '../../sim/drive/turns.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { type PartName, partsOf } from '../../sim/pose/parts.ts'
import { POSE_STRIDE, newPoses, poseOffset, posePlan, writePoses } from '../../sim/pose/pose.ts'
import { SUBSTANCE_NAMES, type SubstanceName, substanceOf } from '../material/substances.ts'
import { sweepers } from '../scene/body/brush.ts'
import { type MachineBodies, disposeBodies, machineBodies } from '../scene/machine-bodies.ts'
import { machineShape } from '../scene/machine-shape.ts'
import { type ElectricBodies, disposeElectric, electricBodies } from '../scene/electric/electric-bodies.ts'

export interface SceneMoment {
  readonly machine: Machine
  readonly turns: WormTurns
  readonly play: Play
  /** 0 together, 1 all parts off */
  readonly apart: number
  readonly motorCut: boolean
  /** Step of the speed control, from 0 */
  readonly setting: number
  /** Whether the plug is in its socket; it is pulled where the parts stand apart */
  readonly pluggedIn: boolean
  /** With its case; without it the gears can be seen. */
  readonly closed: boolean
}

const METRES_PER_MM = 0.001

function materialOf(name: SubstanceName): Material {
  const { colour, metalness, roughness, ...rest } = substanceOf(name)
  const color = new Color(colour)
  const material =
    'unlit' in rest
      ? new MeshBasicMaterial({ color })
      : new MeshStandardMaterial({ color, metalness, roughness })
  material.name = name
  return material
}

/** One mesh for each substance of a part; they share vertices. */
function meshesOf(geometry: BufferGeometry, materials: Map<SubstanceName, Material>): Mesh[] {
  const substances = geometry.getAttribute('substance')
  const corners = new Map<number, number[]>()
  for (const corner of geometry.index!.array) {
    const number = substances.getX(corner)
    const list = corners.get(number)
    if (list) list.push(corner)
    else corners.set(number, [corner])
  }
  return [...corners].map(([number, indices]) => {
    const name = SUBSTANCE_NAMES[number]!
    const own = new BufferGeometry()
    own.setAttribute('position', geometry.getAttribute('position'))
    own.setAttribute('normal', geometry.getAttribute('normal'))
    own.setIndex(new BufferAttribute(Uint32Array.from(indices), 1))
    const material = materials.get(name) ?? materialOf(name)
    materials.set(name, material)
    const mesh = new Mesh(own, material)
    mesh.name = name
    return mesh
  })
}

/** Instances written out, since few programs read them from a file. */
function writtenOut(instances: InstancedMesh): BufferGeometry {
  const { geometry, count } = instances
  const from = { position: geometry.getAttribute('position'), normal: geometry.getAttribute('normal') }
  const vertices = from.position.count
  const whole = new BufferGeometry()
  const matrix = new Matrix4()
  for (const name of ['position', 'normal'] as const) {
    const all = new BufferAttribute(new Float32Array(3 * vertices * count), 3)
    for (let i = 0; i < count; i++) {
      instances.getMatrixAt(i, matrix)
      const placed = from[name].clone()
      if (name === 'position') placed.applyMatrix4(matrix)
      else placed.transformDirection(matrix)
      all.array.set(placed.array, 3 * vertices * i)
    }
    whole.setAttribute(name, all)
  }
  const substances = new Float32Array(vertices * count)
  for (let i = 0; i < count; i++) substances.set(geometry.getAttribute('substance').array, vertices * i)
  whole.setAttribute('substance', new BufferAttribute(substances, 1))
  const corners = geometry.index!.array
  const indices = new Uint32Array(corners.length * count)
  for (let i = 0; i < count; i++)
    indices.set(
      corners.map((corner) => corner + vertices * i),
      corners.length * i,
    )
  return whole.setIndex(new BufferAttribute(indices, 1))
}

/** Solid, and what moves by itself on it: the knob at its step, the socket on the plug or off it. */
function electricGeometries(part: PartName, electric: ElectricBodies, moment: SceneMoment): BufferGeometry[] {
  const solid = electric.solids.get(part)
  const { socket, knob, unplugged } = electric
  if (part === 'plug' && socket && !(moment.pluggedIn && moment.apart === 0))
    socket.translate(0, 0, unplugged)
  const extra =
    part === 'plug'
      ? socket
      : part === 'setting' && knob
        ? knob.geometry.rotateY(knob.angles[moment.setting] ?? 0).translate(...knob.at)
        : null
  return [solid, extra].filter((each) => each !== null && each !== undefined)
}

function geometriesOf(
  part: PartName,
  bodies: MachineBodies,
  { motorCut, closed }: SceneMoment,
): BufferGeometry[] {
  if (part === 'case' && !closed) return []
  const solid = part === 'motor' && !motorCut ? bodies.wholeMotor : bodies.solids.get(part)
  const geometries = [solid, bodies.marks.get(part)].filter((each) => each !== null && each !== undefined)
  if (part !== 'leftBrush' && part !== 'rightBrush') return geometries
  const { leftFirstRow, rightFirstRow } = bodies.layout.output
  const firstRow = part === 'leftBrush' ? leftFirstRow : rightFirstRow
  const instances = sweepers(bodies.layout, firstRow, new MeshBasicMaterial(), 'low')
  return [...geometries, writtenOut(instances)]
}

function sceneGroup(moment: SceneMoment): Group {
  const { machine, turns, play, apart } = moment
  const bodies = machineBodies(machine, machineShape(machine, 'high'))
  const electric = electricBodies(machine, bodies.layout, 'high')
  const poses = writePoses(newPoses(), posePlan(bodies.layout), turns, apart, play)
  const materials = new Map<SubstanceName, Material>()
  const root = new Group()
  root.name = machine.name
  root.scale.setScalar(METRES_PER_MM)
  for (const { part, name } of partsOf(machine)) {
    const solids = [...geometriesOf(part, bodies, moment), ...electricGeometries(part, electric, moment)]
    const meshes = solids.flatMap((each) => meshesOf(each, materials))
    if (meshes.length === 0) continue
    const group = new Group().add(...meshes)
    group.name = name
    const at = poseOffset(part)
    group.position.fromArray(poses, at)
    group.quaternion.fromArray(poses.subarray(at, at + POSE_STRIDE), 3)
    root.add(group)
  }
  disposeBodies(bodies)
  disposeElectric(electric)
  return root
}

export async function sceneFile(moment: SceneMoment): Promise<Uint8Array<ArrayBuffer>> {
  const file = await new GLTFExporter().parseAsync(sceneGroup(moment), { binary: true })
  return new Uint8Array(file as ArrayBuffer)
}
