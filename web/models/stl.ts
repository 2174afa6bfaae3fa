/** A print as binary STL. The form knows no unit, so the heading says it. */
import { BufferAttribute, BufferGeometry, Group, Mesh } from 'three'
import { STLExporter } from 'three/examples/jsm/exporters/STLExporter.js'
import { weldedMesh } from '../../sim/shape/welded-mesh.ts'
import { type PrintItem, type PrintModel, movedPositions } from './print-model.ts'

/** The heading has 80 bytes, and must not begin with 'solid', which is how the text form begins. */
const HEADING = 80
const HEADING_BEFORE = 'Counterturn, unit: mm, '

/** Welded again where it lies, since moving rounds. */
function meshOf({ body, x, y }: PrintItem): Mesh {
  const positions = movedPositions(body.mesh.positions, [x, y, 0])
  const laid = weldedMesh({ positions, normals: positions, indices: body.mesh.indices })
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(laid.positions, 3))
  return new Mesh(geometry.setIndex(new BufferAttribute(laid.indices, 1)))
}

export function stlOf({ items }: PrintModel, name: string): Uint8Array<ArrayBuffer> {
  const group = new Group().add(...items.map(meshOf))
  const { buffer } = new STLExporter().parse(group, { binary: true })
  const bytes = new Uint8Array(buffer)
  const heading = (HEADING_BEFORE + name).replace(/[^ -~]/g, '?').slice(0, HEADING)
  bytes.set(new TextEncoder().encode(heading))
  return bytes
}
