/** What the sliding contact costs: heat and length. */
import { USUAL_LIFE } from '../../sim/heat/brush-wear.ts'
import { figure, givenFigure, quantityText } from '../instrument/reading-text.ts'
import type { BrushedMachine } from './brushes-state.ts'
import type { BrushNow } from './brushes-now.ts'
import { lifeText, lifeVerdict } from './brushes-words.ts'

interface WearProps {
  readonly machine: BrushedMachine
  readonly now: BrushNow
}

const MOTOR = { 'permanent-magnet': 'small motor with magnets', universal: 'mains universal motor' } as const

export function BrushesWear({ machine: { brushes, motor }, now: { figures } }: WearProps) {
  const { least, most } = USUAL_LIFE[motor.kind]
  return (
    <section aria-label="Wear and loss">
      <h3>
        Life of the brushes: {lifeText(figures.life)} <span className="small">indicative</span>
      </h3>
      <p>
        {lifeVerdict(figures)} For a {MOTOR[motor.kind]} {least} to {most} h are usual.
      </p>
      <dl className="brushes-rows">
        <Row label="Wear">{`${figure(figures.wear)} mm in 1000 h`}</Row>
        <Row label="Length that can wear off">{`${givenFigure(brushes.usableLength)} mm`}</Row>
        <Row label="Sliding speed">{quantityText(figures.slidingSpeed, 'm/s')}</Row>
        <Row label="Rubbing of both brushes">{quantityText(figures.frictionLoss, 'W')}</Row>
        <Row label="Drop in the contacts">{quantityText(figures.contactLoss, 'W')}</Row>
      </dl>
      <p className="small">
        Wear grows with the way that the brush slides and with the square of the current. Rubbing is part of
        the friction of the shaft, not beside it.
      </p>
    </section>
  )
}

function Row({ label, children }: { readonly label: string; readonly children: string }) {
  return (
    <div>
      <dt>{label}</dt>
      <dd className="number">{children}</dd>
    </div>
  )
}
