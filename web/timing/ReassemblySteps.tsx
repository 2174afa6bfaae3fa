/** Take the left wheel out, put it in at a tooth, and turn by hand to see whether the rows clear. */
import { useEffect, useId, useRef } from 'react'
import { Icon } from '../instrument/Icon.tsx'
import { StepField } from '../instrument/StepField.tsx'
import { distanceText, nextText, rowsWord } from './timing-words.ts'
import type { Reassembly } from './use-reassembly.ts'
import type { Timing } from './use-timing.ts'

interface StepProps {
  readonly timing: Timing
  readonly reassembly: Reassembly
}

/** After a step its first control has the focus, as the one that was pressed is gone. */
function useFocusOfStep(step: string) {
  const box = useRef<HTMLElement>(null)
  const before = useRef(step)
  useEffect(() => {
    if (before.current === step) return
    before.current = step
    const control = box.current?.querySelector<HTMLElement>('input') ?? box.current?.querySelector('button')
    control?.focus()
  }, [step])
  return box
}

export function ReassemblySteps({ timing, reassembly }: StepProps) {
  const title = useId()
  const { exercise, done, said } = reassembly
  const { step } = exercise
  const box = useFocusOfStep(done ? 'done' : step)
  return (
    <section ref={box} aria-labelledby={title} className="timing-exercise">
      <h3 id={title}>Put it back together</h3>
      {step === 'together' && <Together timing={timing} reassembly={reassembly} />}
      {step === 'out' && <Out timing={timing} reassembly={reassembly} />}
      {step === 'in' && <In timing={timing} reassembly={reassembly} />}
      <p className="unseen" role="status">
        {said}
      </p>
    </section>
  )
}

function Together({ timing, reassembly }: StepProps) {
  return (
    <>
      <p>
        Take the left wheel out, put it in at another tooth, and turn by hand to see whether the{' '}
        {rowsWord(timing.pair)} clear.
      </p>
      <p className="small">
        Unplug a real machine before opening it. Follow local codes and licensed practice.
      </p>
      <button type="button" className="button" onClick={reassembly.takeOut}>
        Take the left wheel out
      </button>
    </>
  )
}

function Out({ timing, reassembly }: StepProps) {
  const { exercise, choose, put, leave } = reassembly
  const { pair } = timing
  if (exercise.step !== 'out') return null
  const { tooth, refused } = exercise
  return (
    <>
      <p>
        The case is up and both wheels are out, with shafts and outputs. The right one goes back as it was.
      </p>
      <StepField
        label="Put the left wheel in at tooth"
        value={tooth}
        min={0}
        max={pair.teeth - 1}
        less="One tooth less"
        more="One tooth more"
        onChange={(next) => {
          choose(next)
          return null
        }}
      />
      {refused !== null && (
        <p className="timing-finding">
          <span className="timing-swatch" />
          <span>
            <b>It does not go in here.</b> The {rowsWord(pair)} would stand {distanceText(refused)} from each
            other, and they need {distanceText(pair.need)}. {nextText(timing)}
          </span>
        </p>
      )}
      <div className="timing-buttons">
        <button type="button" className="button main" onClick={put}>
          Put it in
        </button>
        <button type="button" className="button" onClick={leave}>
          Leave it as it was
        </button>
      </div>
    </>
  )
}

function In({ timing, reassembly }: StepProps) {
  const { exercise, passed, done, turning, turn, takeOut, finish } = reassembly
  const { pair } = timing
  if (exercise.step !== 'in') return null
  const { tooth, meets } = exercise
  return (
    <>
      <p>
        In at tooth {tooth}. Turn by hand through one wheel turn, {pair.teeth} teeth.
      </p>
      <Progress teeth={pair.teeth} passed={Math.min(passed, pair.teeth)} meets={meets} />
      {done && <Finding timing={timing} meets={meets} />}
      <div className="timing-buttons">
        {done ? (
          <>
            <button type="button" className="button" onClick={takeOut}>
              Take it out again
            </button>
            <button type="button" className="button" onClick={finish}>
              Done
            </button>
          </>
        ) : (
          <>
            <button
              type="button"
              className="button main"
              aria-disabled={turning}
              onClick={() => turn('tooth')}
            >
              Turn one tooth
            </button>
            <button type="button" className="button" aria-disabled={turning} onClick={() => turn('rest')}>
              Turn the rest
            </button>
          </>
        )}
      </div>
    </>
  )
}

/** So many marks still have a gap between them in the narrowest panel. */
const MOST_APART = 60

interface ProgressProps {
  readonly teeth: number
  readonly passed: number
  readonly meets: number | null
}

/** One mark a tooth: passed, to come, and the one at which the rows would meet. */
function Progress({ teeth, passed, meets }: ProgressProps) {
  return (
    <div className="timing-progress">
      <div
        className="timing-teeth"
        data-dense={teeth > MOST_APART}
        role="progressbar"
        aria-label="Teeth passed"
        aria-valuemin={0}
        aria-valuemax={teeth}
        aria-valuenow={passed}
      >
        {Array.from({ length: teeth }, (_, n) => (
          <span key={n} data-tooth={n + 1 === meets ? 'meets' : n < passed ? 'passed' : 'ahead'} />
        ))}
      </div>
      <span className="number">
        {passed} of {teeth}
      </span>
    </div>
  )
}

interface FindingProps {
  readonly timing: Timing
  readonly meets: number | null
}

function Finding({ timing, meets }: FindingProps) {
  const { pair, chosen } = timing
  if (meets !== null)
    return (
      <div className="note">
        <span>
          <Icon name="look" />
        </span>
        <p>
          <b>Stopped in time, at tooth {meets}.</b> Before it has passed the {rowsWord(pair)} would come
          nearer than {distanceText(pair.need)}.
        </p>
      </div>
    )
  return (
    <p className="timing-finding">
      <Icon name="check" />
      <span>
        <b>Clear over a whole turn.</b> The {rowsWord(pair)} keep {distanceText(chosen.distance)} and need{' '}
        {distanceText(pair.need)}: {distanceText(chosen.distance - pair.need)} is left.
      </span>
    </p>
  )
}
