/** What both meshes do to the worm and its bearings: what cancels, what adds. */
import { type BearingReactions, radialLoad } from '../../sim/gear/mesh-forces.ts'
import { useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { quantityText } from '../instrument/reading-text.ts'
import { MarkSign } from '../instrument/MarkSign.tsx'
import type { ForceLoads, Support } from '../store/view.ts'
import { Choice } from '../panel/Choice.tsx'
import { ForcePicture } from './ForcePicture.tsx'
import {
  type ForceRow,
  NOTICED,
  type WormForces,
  besideText,
  forceRows,
  headWords,
  oneBearingWords,
} from './forces.ts'
import { keepSign } from '../panel/panels.ts'
import { Switch } from '../panel/Switch.tsx'
import { useForces } from './use-forces.ts'
import './gears.css'

const LOADS: readonly { readonly value: ForceLoads; readonly label: string }[] = [
  { value: 'bench', label: 'As set' },
  { value: 'equal', label: 'Equal' },
  { value: 'unequal', label: '7 to 5' },
  { value: 'one', label: 'One only' },
]
const SUPPORTS: readonly { readonly value: Support; readonly label: string }[] = [
  { value: 'between', label: 'On both sides' },
  { value: 'overhung', label: 'Overhung' },
]

export function ForcesPanel() {
  const workshop = useWorkshop()
  const { view } = workshop
  const { forces, steady } = useForces()
  const hand = useMachine(({ gearing }) => gearing.hand)
  const loads = useView((state) => state.forceLoads)
  const support = useView((state) => state.support)
  const kept = useView(({ keptSigns }) => keptSigns.includes('forces'))
  return (
    <div className="panel-column gear-panel">
      <section aria-label="Forces on the worm">
        <h2 className="gear-head">{headWords(forces)}</h2>
        <ForcePicture forces={forces} hand={hand} />
        <Choice
          label="Loads on the wheels"
          choices={LOADS}
          value={loads}
          onChange={(forceLoads) => view.setState({ forceLoads })}
        />
        <p className="small">{loadWords(loads, steady)}</p>
        <ForceTable rows={forceRows(forces)} />
        <p className="small">
          Plus is to the right, up, and towards you. Ring with a point: up; with a cross: down.
        </p>
      </section>
      <section aria-label="Bearings">
        <h3>Bearings</h3>
        <Choice
          label="Where the bearings sit"
          choices={SUPPORTS}
          value={support}
          onChange={(next) => view.setState({ support: next })}
        />
        <BearingTable forces={forces} />
        <p>{oneBearingWords(forces)}</p>
        {support === 'overhung' && (
          <p>Overhung, both sit behind the wheels, and every side load on the worm reaches them enlarged.</p>
        )}
      </section>
      <Switch
        label="Keep the arrows on the stage"
        on={kept}
        onChange={(keep) => keepSign(workshop, 'forces', keep)}
      />
    </div>
  )
}

function loadWords(loads: ForceLoads, steady: boolean): string {
  const total = 'The same total, shared'
  if (loads === 'equal') return `${total} evenly.`
  if (loads === 'unequal') return `${total} 7 to 5, the right wheel taking more.`
  if (loads === 'one') return 'The same total, all of it on the right wheel.'
  return steady ? 'Running steadily as set, jams left out.' : 'For the loads as set, as they begin to turn.'
}

function ForceTable({ rows }: { readonly rows: readonly ForceRow[] }) {
  return (
    <table className="force-table">
      <caption className="unseen">On the worm, from each mesh and together</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="unseen">Force or moment</span>
          </th>
          <th scope="col">
            <MarkSign part="left" size={16} />
            Left
          </th>
          <th scope="col">
            <MarkSign part="right" size={16} />
            Right
          </th>
          <th scope="col">Together</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <Row key={row.name} row={row} />
        ))}
      </tbody>
    </table>
  )
}

function Row({ row }: { readonly row: ForceRow }) {
  const largest = Math.max(Math.abs(row.left), Math.abs(row.right))
  const sum = besideText(row.sum, largest)
  return (
    <tr data-does={row.does}>
      <th scope="row">
        {row.name} <span className="small">{row.unit}</span>
      </th>
      <td className="number">{besideText(row.left, largest)}</td>
      <td className="number">{besideText(row.right, largest)}</td>
      <td className="number">
        {sum}
        <span className="small">{row.does === 'add' ? 'adds' : sum === '0' ? 'cancels' : 'difference'}</span>
      </td>
    </tr>
  )
}

const PLACES: readonly {
  readonly key: keyof BearingReactions
  readonly between: string
  readonly overhung: string
}[] = [
  { key: 'A', between: 'A, front', overhung: 'A, near' },
  { key: 'B', between: 'B, rear', overhung: 'B, far' },
]

function BearingTable({ forces }: { readonly forces: WormForces }) {
  const { A, B } = forces.bearings
  const largest = Math.max(radialLoad(A), radialLoad(B), Math.abs(A[2]))
  const newtons = (value: number) => (value < NOTICED * largest ? '0 N' : quantityText(value, 'N'))
  return (
    <table className="force-table">
      <caption className="unseen">Load of each bearing</caption>
      <thead>
        <tr>
          <th scope="col">Bearing</th>
          <th scope="col">Across</th>
          <th scope="col">Along</th>
        </tr>
      </thead>
      <tbody>
        {PLACES.map(({ key, between, overhung }) => (
          <tr key={key}>
            <th scope="row">{forces.at.front > 0 ? between : overhung}</th>
            <td className="number">{newtons(radialLoad(forces.bearings[key]))}</td>
            <td className="number">{newtons(Math.abs(forces.bearings[key][2]))}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
