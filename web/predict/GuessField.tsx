/** The number: typed, or stepped by - and +, echoed where it is read as something else than was written. */
import { type RefObject, useId } from 'react'
import { useStore } from 'zustand'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { withGuess } from '../store/prediction.ts'
import { LARGEST_GUESS, decimalText, echo, readGuess } from './guess.ts'

interface GuessFieldProps {
  readonly questionId: string
  readonly input: RefObject<HTMLInputElement | null>
  /** What was wrong when it was to be committed. */
  readonly said: string | null
}

/** The next whole number up or down. */
const stepped = (turns: number | null, way: 1 | -1): number => {
  if (turns === null) return way > 0 ? 1 : 0
  const whole = way > 0 ? Math.floor(turns) + 1 : Math.ceil(turns) - 1
  return Math.min(LARGEST_GUESS, Math.max(0, whole))
}

export function GuessField({ questionId, input, said }: GuessFieldProps) {
  const { prediction } = useWorkshop()
  const text = useStore(prediction, (now) => now.text)
  const turns = useStore(prediction, (now) => now.turns)
  const messageId = useId()
  const write = (next: string) => {
    const guess = readGuess(next)
    prediction.setState((last) => withGuess(last, next, 'turns' in guess ? guess.turns : null), true)
  }
  const step = (way: 1 | -1) => write(decimalText(stepped(turns, way)))
  const wrong = said !== null && turns === null
  return (
    <div className="guess">
      <div className="guess-row">
        <button
          type="button"
          className="button guess-step"
          aria-label="One turn less"
          onClick={() => step(-1)}
        >
          <Icon name="minus" size={24} />
        </button>
        <label className="guess-box">
          <input
            ref={input}
            className="number"
            type="text"
            inputMode="text"
            autoComplete="off"
            maxLength={60}
            size={Math.max(2, Math.min(9, text.length))}
            data-long={text.length > 4}
            value={text}
            placeholder="?"
            aria-labelledby={questionId}
            aria-describedby={messageId}
            aria-invalid={wrong}
            onChange={(event) => write(event.currentTarget.value)}
          />
          <span aria-hidden="true">worm turns</span>
        </label>
        <button
          type="button"
          className="button guess-step"
          aria-label="One turn more"
          onClick={() => step(1)}
        >
          <Icon name="plus" size={24} />
        </button>
      </div>
      <p className="small guess-said" id={messageId} aria-live="polite" data-wrong={wrong}>
        {wrong ? said : (echo(text) ?? 'Or drag the flag along the tape.')}
      </p>
    </div>
  )
}
