/** Contact in numbers, each with where it comes from. */
import { useMemo } from 'react'
import type { ContactField } from '../../sim/gear/contact-field.ts'
import type { Side } from '../../sim/gear/gear-numbers.ts'
import { contactRatio } from '../../sim/gear/contact-ratio.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { FormulaId } from '../instrument/formulas.ts'
import { NOTHING, figure, quantityText } from '../instrument/reading-text.ts'
import { FormulaButton } from '../instrument/use-formula.tsx'
import { useReadout, useSteady } from '../instrument/use-reading.ts'
import { averageWords, slidingWords, wheelPlay, wormPlay } from './contact-words.ts'
import { slidingSpan } from './sliding.ts'

interface FactProps {
  readonly name: string
  readonly text: string
  readonly formula?: FormulaId
}

export function Fact({ name, text, formula }: FactProps) {
  return (
    <div className="gear-fact">
      <dt>{name}</dt>
      <dd className="number">
        {text}
        {formula && <FormulaButton id={formula} of={name} />}
      </dd>
    </div>
  )
}

interface ContactFactsProps {
  readonly machine: Machine
  readonly field: ContactField
  readonly side: Side
}

export function ContactFacts({ machine, field, side }: ContactFactsProps) {
  const { gearing } = machine
  const { midPlane, total } = useMemo(() => contactRatio(gearing), [gearing])
  const span = useMemo(() => slidingSpan(gearing, field), [gearing, field])
  const steady = useSteady()
  const running = useReadout(({ motion }) => motion === 'running')
  const wormSpeed = useReadout(({ motion, reading }) =>
    motion === 'running' ? reading.wormSpeed : (steady?.reading.wormSpeed ?? Number.NaN),
  )
  const size = Math.abs(wormSpeed)
  const known = Number.isFinite(size) && size > 0
  const sense = wormSpeed < 0 ? -1 : 1
  const pitch = known ? quantityText(size * pitchSliding(machine), 'm/s') : NOTHING
  return (
    <section aria-label="Contact in numbers">
      <h3>In numbers</h3>
      <dl>
        <Fact name="Contact ratio, middle of the wheel" text={figure(midPlane)} />
        <Fact name="Contact ratio, whole face" text={figure(total)} />
        <Fact
          name={`Sliding at the pitch point, ${running ? 'now' : 'steady'}`}
          text={pitch}
          formula="slidingSpeed"
        />
        {known && (
          <Fact
            name={gearing.wheelForm === 'helical' ? 'Sliding along the path' : 'Sliding along the lines'}
            text={`${figure(size * span.least, 2)} to ${figure(size * span.most, 2)} m/s`}
          />
        )}
        <Fact name="Lost motion at the worm" text={quantityText(wormPlay(gearing), '°')} formula="wormPlay" />
        <Fact
          name="Lost motion at a wheel"
          text={quantityText(wheelPlay(gearing), '°')}
          formula="wheelPlay"
        />
      </dl>
      <p className="small">
        {averageWords(total, gearing.wheelForm)} {slidingWords(side, sense, span.angle)} The contact ratio is
        the travel of a thread while it touches, in axial pitches.
      </p>
    </section>
  )
}

/** At the pitch point, for 1 rad/s of the worm [m/s] */
const pitchSliding = ({
  gearing: { axialModule: m, diameterQuotient: q, wormStarts: z1 },
}: Machine): number => (m * Math.hypot(q, z1)) / 2000
