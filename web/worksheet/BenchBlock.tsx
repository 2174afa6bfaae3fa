/** Room for what is read at a real machine, and what has to be minded there. */
import type { Machine } from '../../sim/machine/machine.ts'

/** An empty cell to write in */
const BLANK = '\u00a0'
const COLUMNS = [1, 2, 3, 4] as const

const COUNTS: readonly string[] = [
  'Worm turns counted',
  'Left wheel turns counted',
  'Right wheel turns counted',
  'Time, seconds',
]
/** Turned by hand, a machine has no supply, and hardly gets warm. */
const rowsFor = ({ motor }: Machine): readonly string[] =>
  motor === null
    ? COUNTS
    : [
        'Setting',
        'Supply, volts',
        'Supply, hertz',
        'Current, amperes',
        ...COUNTS,
        'Air, °C',
        'Motor case, °C',
      ]

export const SafetyBox = () => (
  <aside className="ws-safety">
    <svg viewBox="0 0 24 22" aria-hidden="true">
      <path d="M12 1.5L23 20.5H1Z" fill="none" stroke="#000" strokeWidth="2" strokeLinejoin="round" />
      <path d="M11 8h2l-.3 6h-1.4zM11 15.6h2v2h-2z" fill="#000" />
    </svg>
    <p>
      <b>A real machine.</b> Local rules and licensed practice come first; this sheet gives no leave to open
      one. Mains can kill: unplug it and keep the plug in sight. Capacitors stay charged after that: wait, and
      measure. Let hot parts cool. Keep hair, sleeves and cords away from what turns, and turn by hand with
      the plug out. Instruments on mains are for those qualified for it.
    </p>
  </aside>
)

export const BenchBlock = ({ machine }: { readonly machine: Machine }) => (
  <section className="ws-bench">
    <p className="ws-heading">At the bench</p>
    <table>
      <thead>
        <tr>
          <th scope="col">Reading</th>
          {COLUMNS.map((column) => (
            <th key={column} scope="col">
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rowsFor(machine).map((row) => (
          <tr key={row}>
            <th scope="row">{row}</th>
            {COLUMNS.map((column) => (
              <td key={column}>{BLANK}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
    <SafetyBox />
  </section>
)
