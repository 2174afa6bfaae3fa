import { validateBytes } from 'gltf-validator'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { newPlay } from '../../../sim/drive/play.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { partsOf } from '../../../sim/pose/parts.ts'
import { type SceneMoment, sceneFile } from '../../../web/models/scene-file.ts'
import { bootCleaner, demoMachines } from '../../support/machines.ts'
import { near } from '../../support/near.ts'

/** The one piece of the browser that the writer needs. */
class BlobReader {
  result: ArrayBuffer | null = null
  onloadend: (() => void) | null = null
  readAsArrayBuffer(blob: Blob): void {
    void blob.arrayBuffer().then((bytes) => {
      this.result = bytes
      this.onloadend?.()
    })
  }
}
beforeAll(() => void vi.stubGlobal('FileReader', BlobReader))
afterAll(() => void vi.unstubAllGlobals())

const moment = (machine: SceneMoment['machine'], more: Partial<SceneMoment> = {}): SceneMoment => ({
  machine,
  turns: { turns: 0, ticks: 0, rest: 0 },
  play: newPlay(),
  apart: 0,
  motorCut: true,
  setting: 0,
  pluggedIn: true,
  closed: false,
  ...more,
})

interface Gltf {
  readonly nodes: readonly {
    readonly name: string
    readonly mesh?: number
    readonly children?: readonly number[]
    readonly scale?: readonly number[]
    readonly matrix?: readonly number[]
    readonly translation?: readonly number[]
  }[]
  readonly meshes: readonly {
    readonly primitives: readonly { readonly attributes: { POSITION: number } }[]
  }[]
  readonly accessors: readonly { readonly min: readonly number[]; readonly max: readonly number[] }[]
}

function jsonOf(bytes: Uint8Array): Gltf {
  const length = new DataView(bytes.buffer).getUint32(12, true)
  return JSON.parse(new TextDecoder().decode(bytes.subarray(20, 20 + length))) as Gltf
}

const nodeOf = ({ nodes }: Gltf, name: string) => nodes.find((node) => node.name === name)!
const placeOf = (node: Gltf['nodes'][number]): readonly number[] =>
  node.matrix?.slice(12, 15) ?? node.translation ?? [0, 0, 0]

/** Least and most of every solid of a part, one after the other */
const boundsOf = (gltf: Gltf, name: string): readonly (readonly number[])[] =>
  (nodeOf(gltf, name).children ?? []).flatMap((child) => {
    const { primitives } = gltf.meshes[gltf.nodes[child]!.mesh!]!
    return primitives.flatMap(({ attributes }) => {
      const { min, max } = gltf.accessors[attributes.POSITION]!
      return [min, max]
    })
  })

test.each(demoMachines.map((machine) => ({ name: machine.name, machine })))(
  'the Khronos validator finds no fault in the scene of $name',
  async ({ machine }) => {
    const bytes = await sceneFile(moment(machine))
    const { issues, info } = await validateBytes(bytes)
    expect({ errors: issues.numErrors, warnings: issues.numWarnings }).toEqual({ errors: 0, warnings: 0 })
    expect(info.totalTriangleCount).toBeGreaterThan(20_000)
  },
)

test('every part but the case is a node with its name, in metres', async () => {
  const gltf = jsonOf(await sceneFile(moment(bootCleaner)))
  const names = gltf.nodes.map(({ name }) => name)
  for (const { part, name } of partsOf(bootCleaner)) expect(names.includes(name)).toBe(part !== 'case')
  const root = nodeOf(gltf, bootCleaner.name)
  const scale = root.matrix ? [root.matrix[0], root.matrix[5], root.matrix[10]] : root.scale
  expect(scale).toEqual([0.001, 0.001, 0.001])
  const a = pairProportions(bootCleaner.gearing).centreDistance
  for (const [part, way] of [['leftWheel', -1] as const, ['rightWheel', 1] as const]) {
    const { name } = partsOf(bootCleaner).find((each) => each.part === part)!
    near(placeOf(nodeOf(gltf, name))[0]!, way * a, 1e-5)
  }
})

test('parts that stand apart on the stage stand apart in the file, and a closed case comes along', async () => {
  const gltf = jsonOf(await sceneFile(moment(bootCleaner, { apart: 1, closed: true })))
  const names = partsOf(bootCleaner)
  const nameOf = (part: string) => names.find((each) => each.part === part)!.name
  const a = pairProportions(bootCleaner.gearing).centreDistance
  expect(placeOf(nodeOf(gltf, nameOf('rightWheel')))[0]).toBeGreaterThan(1.2 * a)
  expect(nodeOf(gltf, nameOf('case'))).toBeDefined()
})

test('the knob stands at its step and the socket off the plug that is out', async () => {
  const spanOf = (gltf: Gltf, part: string) =>
    boundsOf(gltf, partsOf(bootCleaner).find((each) => each.part === part)!.name)
  const plain = jsonOf(await sceneFile(moment(bootCleaner)))
  const turned = jsonOf(await sceneFile(moment(bootCleaner, { setting: 1 })))
  const pulled = jsonOf(await sceneFile(moment(bootCleaner, { pluggedIn: false })))
  expect(spanOf(turned, 'setting')).not.toEqual(spanOf(plain, 'setting'))
  expect(spanOf(turned, 'plug')).toEqual(spanOf(plain, 'plug'))
  expect(spanOf(pulled, 'plug')).not.toEqual(spanOf(plain, 'plug'))
  expect(spanOf(pulled, 'setting')).toEqual(spanOf(plain, 'setting'))
})
