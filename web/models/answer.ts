/** The whole work on one order, wherever it is done: cut, measure, and write the file if one is asked for. */
import { type PrintMeasure, type Tell, printMeasure, printModel } from './print-model.ts'
import type { MeshFormat, PrintOrder } from './print-order.ts'
import { stlOf } from './stl.ts'
import { threeMfOf } from './three-mf.ts'

export interface Request {
  readonly order: PrintOrder
  /** Null where only the measure is wanted. */
  readonly format: MeshFormat | null
}

export interface Answer {
  readonly measure: PrintMeasure
  readonly file: Uint8Array<ArrayBuffer> | null
}

const WRITERS = { stl: stlOf, '3mf': threeMfOf } as const

export function answer({ order, format }: Request, tell: Tell): Answer {
  const model = printModel(order, tell)
  const measure = printMeasure(model)
  if (format === null) return { measure, file: null }
  tell(`Writing ${measure.triangles.toLocaleString('en').replaceAll(',', '\u2009')} triangles`)
  return { measure, file: WRITERS[format](model, order.machineName) }
}
