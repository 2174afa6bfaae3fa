/**
 * A print as 3MF: a zip of three XML files, after the 3MF Core Specification 1.3 (3MF Consortium), from memory.
 * Vertices are shared, lengths are millimetres, and a part that is wanted twice is written once.
 */
import { strToU8, zipSync } from 'fflate'
import type { PrintBody, PrintItem, PrintModel } from './print-model.ts'
import { xmlText } from './xml.ts'

const MODEL_PATH = '3D/3dmodel.model'
const PACKAGES = 'http://schemas.openxmlformats.org/package/2006'
const CORE = 'http://schemas.microsoft.com/3dmanufacturing'
const XML = '<?xml version="1.0" encoding="UTF-8"?>\n'

const CONTENT_TYPES =
  `${XML}<Types xmlns="${PACKAGES}/content-types">` +
  '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
  '<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>' +
  '</Types>'
const RELATIONSHIPS =
  `${XML}<Relationships xmlns="${PACKAGES}/relationships">` +
  `<Relationship Id="rel0" Target="/${MODEL_PATH}" Type="${CORE}/2013/01/3dmodel"/>` +
  '</Relationships>'

/** Lengths are written to the millionth of a millimetre: finer than single precision holds above 10 mm. */
const STEPS_PER_MM = 1e6
const length = (value: number): string => String(Math.round(value * STEPS_PER_MM) / STEPS_PER_MM)

function objectXml({ name, mesh: { positions: p, indices } }: PrintBody, id: number): string {
  const parts = [`<object id="${id}" type="model" name="${xmlText(name)}"><mesh><vertices>`]
  for (let i = 0; i < p.length; i += 3) {
    parts.push(`<vertex x="${length(p[i]!)}" y="${length(p[i + 1]!)}" z="${length(p[i + 2]!)}"/>`)
  }
  parts.push('</vertices><triangles>')
  for (let t = 0; t < indices.length; t += 3) {
    parts.push(`<triangle v1="${indices[t]}" v2="${indices[t + 1]}" v3="${indices[t + 2]}"/>`)
  }
  parts.push('</triangles></mesh></object>')
  return parts.join('')
}

const itemXml = ({ x, y }: PrintItem, id: number): string =>
  `<item objectid="${id}" transform="1 0 0 0 1 0 0 0 1 ${length(x)} ${length(y)} 0"/>`

function modelXml({ bodies, items }: PrintModel, title: string): string {
  const idOf = (body: PrintBody) => bodies.indexOf(body) + 1
  return (
    `${XML}<model unit="millimeter" xml:lang="en-US" xmlns="${CORE}/core/2015/02">` +
    `<metadata name="Title">${xmlText(title)}</metadata>` +
    '<metadata name="Application">Counterturn</metadata>' +
    `<resources>${bodies.map((body) => objectXml(body, idOf(body))).join('')}</resources>` +
    `<build>${items.map((item) => itemXml(item, idOf(item.body))).join('')}</build></model>`
  )
}

export const threeMfOf = (model: PrintModel, title: string): Uint8Array<ArrayBuffer> =>
  zipSync({
    '[Content_Types].xml': strToU8(CONTENT_TYPES),
    '_rels/.rels': strToU8(RELATIONSHIPS),
    [MODEL_PATH]: strToU8(modelXml(model, title)),
  })
