/** An answer in words, which nobody marks. */
import { type RefObject, useId } from 'react'
import { useStore } from 'zustand'
import { useWorkshop } from '../frame/workshop.ts'
import { withAnswer } from '../store/exercise.ts'
import type { AnswerProps } from './answer-props.ts'

const LONGEST = 1000

export function AnswerWords({ headingId, input, said }: AnswerProps) {
  const { exercise } = useWorkshop()
  const text = useStore(exercise, (now) => now.text)
  const saidId = useId()
  const write = (next: string) => {
    const reply = next.trim() === '' ? null : ({ kind: 'words', text: next.trim() } as const)
    exercise.setState((last) => withAnswer(last, next, reply), true)
  }
  const wrong = said !== null && text.trim() === ''
  return (
    <div>
      <textarea
        ref={input as RefObject<HTMLTextAreaElement | null>}
        className="box answer-words"
        rows={3}
        maxLength={LONGEST}
        value={text}
        aria-labelledby={headingId}
        aria-describedby={saidId}
        aria-invalid={wrong}
        onChange={(event) => write(event.currentTarget.value)}
      />
      <p className="small answer-said" id={saidId} aria-live="polite" data-wrong={wrong}>
        {wrong ? said : 'A sentence or two. It stays in this browser.'}
      </p>
    </div>
  )
}
