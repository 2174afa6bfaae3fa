/** The data sheet on paper: two sheets, black on white, for A4 and for Letter. */
import { type ReactNode, useMemo } from 'react'
import { type SheetRow, type SheetTable, gearDataSheet } from '../../sim/gear/data-sheet.ts'
import { wheelBody } from '../../sim/shape/body.ts'
import { checkMachine } from '../../sim/machine/check.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { fieldText } from '../instrument/field-text.ts'
import { writeAddress } from '../file/address.ts'
import { linkFor } from '../file/link-for.ts'
import { useMachine, useWorkshop } from '../frame/workshop.ts'
import { OnPaper } from '../instrument/OnPaper.tsx'
import { Problems } from '../instrument/Problems.tsx'
import { type SheetDrawing, scaleText, sheetDrawing } from './drawing.ts'
import { labelOfPath } from '../instrument/labels.ts'
import { FONT, indexPieces, innerSvg } from './marks.ts'
import { rowText } from './row-text.ts'
import './printed-page.css'

/** What is left of A4's width and of Letter's height inside margins of 15 mm, less title and notes [mm]. */
const ROOM = { width: 180, height: 196 }

interface PrintedPageProps {
  readonly onDone: () => void
}

export const PrintedPage = ({ onDone }: PrintedPageProps) => (
  <OnPaper onDone={onDone}>
    <DataSheet />
  </OnPaper>
)

export function DataSheet() {
  const workshop = useWorkshop()
  const machine = useMachine((now) => now)
  const drawing = useMemo(() => sheetDrawing(machine.name, machine.gearing, ROOM), [machine])
  const link = useMemo(() => {
    const { way } = workshop.view.getState()
    return `${location.href.split('#')[0]}${writeAddress(way, linkFor(workshop))}`
  }, [workshop])
  return (
    <div className="printed" lang="en">
      <Page machine={machine} sheet={1}>
        <Picture drawing={drawing} />
        <p>
          Scale {scaleText(drawing.scale)} on paper except where told, if printed without fitting to the page.
          Lengths in mm. Both wheels are the same part. Ideal geometry, without tolerances: see sheet 2.
        </p>
        <DrawnBore gearing={machine.gearing} />
      </Page>
      <Page machine={machine} sheet={2}>
        <div className="printed-tables">
          {gearDataSheet(machine.gearing).map((table) => (
            <Table key={table.title} table={table} />
          ))}
        </div>
        <Checks machine={machine} />
        <Cautions />
        <p className="printed-link">{link}</p>
      </Page>
    </div>
  )
}

/** The wheel is drawn whole even where the bore that was asked for leaves none; then the paper says which is which. */
function DrawnBore({ gearing }: { readonly gearing: Machine['gearing'] }) {
  const drawn = 2 * wheelBody(gearing).boreRadius
  if (drawn >= gearing.boreDiameter) return null
  return (
    <p>
      <b>
        The bore of {fieldText(gearing.boreDiameter)} mm leaves no rim under the teeth. It is drawn as{' '}
        {drawn.toFixed(2)} mm, the widest that leaves one.
      </b>
    </p>
  )
}

interface PageProps {
  readonly machine: Machine
  readonly sheet: number
  readonly children: ReactNode
}

const Page = ({ machine, sheet, children }: PageProps) => (
  <section className="printed-page">
    <header>
      <h1>{machine.name}</h1>
      <p>Worm and wheels, data sheet, {sheet} of 2</p>
    </header>
    {children}
  </section>
)

/** The marks are the program's own, with every text of a person made harmless in marks.ts. */
const Picture = ({ drawing }: { readonly drawing: SheetDrawing }) => (
  <svg
    role="img"
    width={`${drawing.width}mm`}
    height={`${drawing.height}mm`}
    viewBox={`0 0 ${drawing.width} ${drawing.height}`}
    fontFamily={FONT}
    dangerouslySetInnerHTML={{ __html: innerSvg(drawing) }}
  />
)

function Table({ table: { title, rows } }: { readonly table: SheetTable }) {
  return (
    <table>
      <caption>{title}</caption>
      <tbody>
        {rows.map((row) => (
          <Row key={row.name} row={row} />
        ))}
      </tbody>
    </table>
  )
}

function Row({ row }: { readonly row: SheetRow }) {
  const [letter, index] = indexPieces(row.symbol)
  const isWords = typeof row.value === 'string'
  return (
    <tr>
      <th scope="row">{row.name}</th>
      {!isWords && (
        <td>
          {letter}
          {index && <sub>{index}</sub>}
        </td>
      )}
      <td colSpan={isWords ? 2 : 1}>{rowText(row)}</td>
    </tr>
  )
}

function Checks({ machine }: { readonly machine: Machine }) {
  const problems = checkMachine(machine).filter(({ path }) => path.startsWith('gearing'))
  return (
    <section>
      <h2>Checks of the teeth</h2>
      {problems.length === 0 ? (
        <p>Nothing stands against these gears.</p>
      ) : (
        <Problems problems={problems} labelOf={labelOfPath(machine)} />
      )}
    </section>
  )
}

const Cautions = () => (
  <section>
    <h2>Before anything is made of this</h2>
    <p>
      These are the numbers of ideal geometry, without tolerances, material, or a check of strength and heat.
      Have them checked by a person qualified for it, and follow local codes and licensed practice. Guard the
      gears. Printed gears are models: keep fingers clear, do not load them or drive them from the mains.
    </p>
  </section>
)
