/** Seed, versions, paper, and what is printed besides the questions. */
import { Choice } from '../question/Choice.tsx'
import type { OrderProps } from './SourceChoice.tsx'
import { type Paper, tidySeed } from './order.ts'
import { chance, seedWord } from './seeds.ts'
import { LONGEST_SEED, MOST_SHEETS, isSeed } from './sheet-code.ts'
import { isFixed } from './sheets.ts'

const PAPERS: readonly { readonly value: Paper; readonly label: string }[] = [
  { value: 'a4', label: 'A4' },
  { value: 'letter', label: 'Letter' },
]

interface TickProps {
  readonly label: string
  readonly ticked: boolean
  readonly onChange: (ticked: boolean) => void
}

const Tick = ({ label, ticked, onChange }: TickProps) => (
  <label className="worksheet-tick">
    <input type="checkbox" checked={ticked} onChange={(event) => onChange(event.target.checked)} />
    {label}
  </label>
)

/** What numbers are drawn by, and how often. */
function Drawn({ order, onChange }: Omit<OrderProps, 'at'>) {
  return (
    <>
      <div className="worksheet-row">
        <label className="field">
          <span>Seed</span>
          <input
            type="text"
            autoComplete="off"
            spellCheck={false}
            size={12}
            maxLength={4 * LONGEST_SEED}
            value={order.seed}
            aria-invalid={!isSeed(order.seed)}
            aria-describedby="worksheet-said"
            onChange={(event) => onChange({ seed: tidySeed(event.target.value) })}
          />
        </label>
        <button type="button" className="button" onClick={() => onChange({ seed: seedWord(chance) })}>
          Draw another
        </button>
      </div>
      <label className="field">
        <span>Versions for a class</span>
        <input
          type="number"
          min={1}
          max={MOST_SHEETS}
          value={Number.isNaN(order.versions) ? '' : order.versions}
          aria-describedby="worksheet-said"
          onChange={({ target }) =>
            onChange({ versions: target.value === '' ? Number.NaN : Number(target.value) })
          }
        />
      </label>
    </>
  )
}

export function PrintChoice({ order, onChange }: OrderProps) {
  return (
    <>
      {!isFixed(order) && <Drawn order={order} onChange={onChange} />}
      <Choice
        name="worksheet-paper"
        question="Paper"
        options={PAPERS}
        chosen={order.paper}
        onChoose={(paper) => onChange({ paper })}
      />
      <div className="worksheet-ticks">
        <Tick
          label="Answers, on pages of their own"
          ticked={order.answers}
          onChange={(answers) => onChange({ answers })}
        />
        <Tick
          label="Table for bench readings"
          ticked={order.bench}
          onChange={(bench) => onChange({ bench })}
        />
      </div>
    </>
  )
}
