/** Where the power goes: in one sentence, as a stream, as a table, to take away. */
import { useMemo, useRef } from 'react'
import type { OperatingPoint } from '../../sim/drive/operating-point.ts'
import { ChartActions } from '../chart/ChartActions.tsx'
import type { Column } from '../chart/table.ts'
import { useWidth } from '../chart/use-width.ts'
import { useMachine } from '../frame/workshop.ts'
import { useNowOrSteady, useReadout } from '../instrument/use-reading.ts'
import type { Readout } from '../store/readout.ts'
import { fullWidth } from './ledger-flow.ts'
import { ledgerHeadline, ledgerReason, ledgerSum } from './ledger-words.ts'
import { type Ledger, ledger } from './ledger.ts'
import { LedgerFlow } from './LedgerFlow.tsx'
import { LedgerTable } from './LedgerTable.tsx'

/** While the machine runs, or coasts, of now; else of steady running. */
export function LedgerSection({ steady }: { readonly steady: OperatingPoint | null }) {
  const machine = useMachine((now) => now)
  const when = useReadout(whenWords)
  const reading = useNowOrSteady(steady)
  const settled = useMemo(() => (steady ? ledger(machine, steady.reading) : null), [machine, steady])
  if (!reading)
    return <p>Steady running is not computed here. Turn the machine to see where its power goes.</p>
  return <Section when={when} settled={settled} now={ledger(machine, reading)} />
}

function whenWords({ motion, reading }: Readout): string {
  if (motion !== 'running') return 'Running steadily as set.'
  return reading.wormSpeed === 0 ? 'Now, at a standstill.' : 'Now, as it turns.'
}

interface SectionProps {
  readonly when: string
  readonly settled: Ledger | null
  readonly now: Ledger
}

/** The scale holds what passes now and what will pass in steady running, so that it stays while a machine starts. */
function Section({ when, settled, now }: SectionProps) {
  const machine = useMachine((each) => each)
  const [box, width] = useWidth<HTMLDivElement>()
  const figure = useRef<SVGSVGElement>(null)
  const full = Math.max(fullWidth(now), settled ? fullWidth(settled) : 0)
  const headline = ledgerHeadline(machine, now)
  return (
    <section className="ledger-section" aria-label="Where the power goes">
      <h2>{headline}</h2>
      <p className="small">{when}</p>
      <div className="drive-figure" ref={box}>
        <LedgerFlow
          ledger={now}
          full={full}
          width={width}
          label={`${headline}. The table below lists the parts.`}
          figure={figure}
        />
      </div>
      <p className="small">
        {ledgerReason(now)} {ledgerSum(now)} Hatched is lost as heat; the bar below the stream gives the
        scale.
      </p>
      <LedgerTable ledger={now} />
      <ChartActions name={`${machine.name} power`} figure={figure} columns={() => ledgerColumns(now)} />
    </section>
  )
}

/** One row, a column for each part: numbers as the core gives them. */
export const ledgerColumns = ({ input, parts, rest }: Ledger): readonly Column[] => [
  ...[input, ...parts.filter(({ kind }) => kind !== 'rest')].map(({ name, watts }) => ({
    heading: `${name} [W]`,
    values: [watts],
  })),
  { heading: 'Unaccounted [W]', values: [rest] },
]
