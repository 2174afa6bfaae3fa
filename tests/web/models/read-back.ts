/** Files of prints as the 3MF Consortium's own reader understands them, in strict mode. */
import load, { type Handle, type MeshObject } from '@3mfconsortium/lib3mf'

export interface ReadBody {
  readonly name: string
  readonly positions: Float64Array
  readonly indices: Uint32Array
  /** What the reader itself says of it */
  readonly manifoldAndOriented: boolean
  readonly valid: boolean
}

export interface ReadBack {
  readonly warnings: number
  readonly millimetres: boolean
  readonly bodies: readonly ReadBody[]
  /** Number of the body, from 0, and where it is moved to */
  readonly items: readonly { readonly body: number; readonly at: readonly [number, number, number] }[]
}

const library = await load()

export function readBack(bytes: Uint8Array, kind: 'stl' | '3mf'): ReadBack {
  const path = `/model.${kind}`
  library.FS.writeFile(path, bytes)
  const handles: Handle[] = []
  const held = <T extends Handle>(handle: T): T => {
    handles.push(handle)
    return handle
  }
  const model = held(held(new library.CWrapper()).CreateModel())
  const reader = held(model.QueryReader(kind))
  reader.SetStrictModeActive(true)
  reader.ReadFromFile(path)
  const bodies: ReadBody[] = []
  const objects = held(model.GetMeshObjects())
  while (objects.MoveNext()) bodies.push(bodyOf(held(objects.GetCurrentMeshObject())))
  const items: { body: number; at: [number, number, number] }[] = []
  const build = held(model.GetBuildItems())
  while (build.MoveNext()) {
    const item = held(build.GetCurrent())
    const moved = held(item.GetObjectTransform())
    const at: [number, number, number] = [
      moved.get_Fields_3_0(),
      moved.get_Fields_3_1(),
      moved.get_Fields_3_2(),
    ]
    items.push({ body: item.GetObjectResourceID() - 1, at })
  }
  const millimetres = model.GetUnit() === library.eModelUnit.MilliMeter
  const warnings = reader.GetWarningCount()
  for (const handle of handles.reverse()) handle.delete()
  return { warnings, millimetres, bodies, items }
}

function bodyOf(object: MeshObject): ReadBody {
  const positions = new Float64Array(3 * object.GetVertexCount())
  for (let i = 0; i < positions.length / 3; i++) {
    const vertex = object.GetVertex(i)
    positions.set([vertex.get_Coordinates0(), vertex.get_Coordinates1(), vertex.get_Coordinates2()], 3 * i)
    vertex.delete()
  }
  const indices = new Uint32Array(3 * object.GetTriangleCount())
  for (let i = 0; i < indices.length / 3; i++) {
    const triangle = object.GetTriangle(i)
    indices.set([triangle.get_Indices0(), triangle.get_Indices1(), triangle.get_Indices2()], 3 * i)
    triangle.delete()
  }
  return {
    name: object.GetName(),
    positions,
    indices,
    manifoldAndOriented: object.IsManifoldAndOriented(),
    valid: object.IsValid(),
  }
}

export interface Solid {
  /** Directed edges that come more than once or lack their reverse */
  readonly faultyEdges: number
  readonly pieces: number
  /** [mm3] */
  readonly volume: number
  readonly least: readonly number[]
  readonly most: readonly number[]
}

/** Measured here, without a word from the program: edges, pieces, volume, box. */
export function solidOf({ positions: p, indices }: ReadBody): Solid {
  const vertices = p.length / 3
  const forward = new Float64Array(indices.length)
  const backward = new Float64Array(indices.length)
  const parent = Int32Array.from({ length: vertices }, (_, i) => i)
  const rootOf = (i: number): number => {
    let at = i
    while (parent[at] !== at) at = parent[at] = parent[parent[at]!]!
    return at
  }
  let sixfold = 0
  for (let t = 0; t < indices.length; t += 3) {
    const corner = [indices[t]!, indices[t + 1]!, indices[t + 2]!] as const
    for (let i = 0; i < 3; i++) {
      const [from, to] = [corner[i]!, corner[(i + 1) % 3]!]
      forward[t + i] = from * vertices + to
      backward[t + i] = to * vertices + from
      parent[rootOf(from)] = rootOf(to)
    }
    const [a, b, c] = corner.map((each) => [p[3 * each]!, p[3 * each + 1]!, p[3 * each + 2]!] as const)
    sixfold += a![0] * (b![1] * c![2] - b![2] * c![1])
    sixfold += a![1] * (b![2] * c![0] - b![0] * c![2])
    sixfold += a![2] * (b![0] * c![1] - b![1] * c![0])
  }
  forward.sort()
  backward.sort()
  const faultyEdges = forward.filter((edge, i) => edge !== backward[i] || edge === forward[i - 1]).length
  const used = new Set(indices)
  const along = (axis: number) => [...used].map((vertex) => p[3 * vertex + axis]!)
  const least = [0, 1, 2].map((axis) => along(axis).reduce((a, b) => Math.min(a, b), Infinity))
  const most = [0, 1, 2].map((axis) => along(axis).reduce((a, b) => Math.max(a, b), -Infinity))
  const pieces = new Set([...used].map(rootOf)).size
  return { faultyEdges, pieces, volume: sixfold / 6, least, most }
}
