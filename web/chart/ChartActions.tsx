/** Takes a figure away: its numbers as CSV, its picture as SVG or PNG. */
import { type RefObject, useState } from 'react'
import { saveFile } from '../file/save-file.ts'
import { pngOf, svgText } from './picture.ts'
import { type Column, csvText } from './table.ts'
import './chart.css'

interface ChartActionsProps {
  /** Begins the names of the files, without an ending */
  readonly name: string
  readonly figure: RefObject<SVGSVGElement | null>
  readonly columns: () => readonly Column[]
}

export function ChartActions({ name, figure, columns }: ChartActionsProps) {
  const [failed, setFailed] = useState(false)
  const file = (ending: string) => `${name.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-')}.${ending}`
  const picture = async (act: (svg: SVGSVGElement) => Promise<void>) => {
    const svg = figure.current
    if (!svg) return
    try {
      await act(svg)
      setFailed(false)
    } catch {
      setFailed(true)
    }
  }
  return (
    <div className="chart-actions" role="group" aria-label={`Save ${name}`}>
      <button
        type="button"
        className="button"
        onClick={() => saveFile(file('csv'), 'text/csv', csvText(columns()))}
      >
        Numbers as CSV
      </button>
      <button
        type="button"
        className="button"
        onClick={() => void picture(async (svg) => saveFile(file('svg'), 'image/svg+xml', svgText(svg)))}
      >
        Picture as SVG
      </button>
      <button
        type="button"
        className="button"
        onClick={() => void picture(async (svg) => saveFile(file('png'), 'image/png', await pngOf(svg)))}
      >
        Picture as PNG
      </button>
      {failed && (
        <p role="status" className="small">
          This browser could not make the picture. Take the SVG instead.
        </p>
      )}
    </div>
  )
}
