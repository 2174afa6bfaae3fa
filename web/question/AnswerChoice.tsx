/** One of a few options, each on a line of its own. */
import { type RefObject, useId } from 'react'
import { useStore } from 'zustand'
import type { AskChoice } from '../../sim/question/question.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { withAnswer } from '../store/exercise.ts'
import type { AnswerProps } from './answer-props.ts'

type AnswerChoiceProps = AnswerProps & { readonly ask: AskChoice }

export function AnswerChoice({ ask, headingId, input, said }: AnswerChoiceProps) {
  const { exercise } = useWorkshop()
  const reply = useStore(exercise, (now) => now.reply)
  const id = useId()
  const chosen = reply?.kind === 'choice' ? reply.option : null
  return (
    <fieldset className="answer-options" aria-labelledby={headingId} aria-describedby={`${id}-said`}>
      {ask.options.map((option, i) => (
        <label key={option.id} className="answer-option">
          <input
            ref={i === 0 ? (input as RefObject<HTMLInputElement | null>) : undefined}
            type="radio"
            name={id}
            checked={chosen === option.id}
            onChange={() =>
              exercise.setState(
                (last) => withAnswer(last, option.text, { kind: 'choice', option: option.id }),
                true,
              )
            }
          />
          <span>{option.text}</span>
        </label>
      ))}
      <p className="small answer-said" id={`${id}-said`} aria-live="polite" data-wrong={said !== null}>
        {chosen === null ? said : null}
      </p>
    </fieldset>
  )
}
