/** Cards that are put in order, by buttons, or by Alt with an arrow key. What is shown is the answer. */
import { type KeyboardEvent, type RefObject, useEffect, useRef } from 'react'
import { useStore } from 'zustand'
import type { Option } from '../../sim/question/family.ts'
import type { AskOrder } from '../../sim/question/question.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { withAnswer } from '../store/exercise.ts'
import type { AnswerProps } from './answer-props.ts'
import { moved } from './moved.ts'

type AnswerOrderProps = AnswerProps & { readonly ask: AskOrder }

function useOrder({ cards }: AskOrder) {
  const { exercise, announcer } = useWorkshop()
  const reply = useStore(exercise, (now) => now.reply)
  const order = reply?.kind === 'order' ? reply.order : cards.map(({ id }) => id)
  const write = (next: readonly string[]) => {
    const words = next.map((id) => cards.find((card) => card.id === id)?.text ?? id)
    exercise.setState((last) => withAnswer(last, words.join('; '), { kind: 'order', order: next }), true)
  }
  const first = useRef(() => undefined as void)
  useEffect(() => {
    // untouched, it is no answer that somebody began
    const laid = cards.map(({ id }) => id)
    first.current = () =>
      exercise.setState((last) => withAnswer(last, '', { kind: 'order', order: laid }), true)
  })
  useEffect(() => {
    if (exercise.getState().reply === null) first.current()
  }, [cards, exercise])
  const move = (card: Option, by: 1 | -1) => {
    const from = order.indexOf(card.id)
    const next = moved(order, from, from + by)
    if (next === order) return
    write(next)
    announcer.say(`${card.text}: place ${from + by + 1} of ${order.length}.`)
  }
  return { order, move }
}

interface CardProps {
  readonly card: Option
  readonly place: number
  readonly count: number
  readonly first: RefObject<HTMLElement | null> | undefined
  readonly onMove: (by: 1 | -1) => void
}

/** Either end keeps its button, so that the focus stays on it when a card has come there. */
function Card({ card, place, count, first, onMove }: CardProps) {
  const byKey = (event: KeyboardEvent) => {
    const by = ({ ArrowUp: -1, ArrowDown: 1 } as const)[event.key]
    if (by === undefined || !event.altKey) return
    event.preventDefault()
    onMove(by)
  }
  const button = (by: 1 | -1, ref?: RefObject<HTMLButtonElement | null>) => (
    <button
      ref={ref}
      type="button"
      className="button icon answer-move"
      data-up={by < 0}
      aria-disabled={by < 0 ? place === 1 : place === count}
      aria-keyshortcuts={by < 0 ? 'Alt+ArrowUp' : 'Alt+ArrowDown'}
      onKeyDown={byKey}
      onClick={() => onMove(by)}
    >
      <Icon name="down" />
      <span className="unseen">
        {card.text}: {by < 0 ? 'earlier' : 'later'}
      </span>
    </button>
  )
  return (
    <li className="answer-card">
      <span className="number" aria-hidden="true">
        {place}
      </span>
      <span>{card.text}</span>
      {button(-1, first as RefObject<HTMLButtonElement | null> | undefined)}
      {button(1)}
    </li>
  )
}

export function AnswerOrder({ ask, headingId, input, said }: AnswerOrderProps) {
  const { order, move } = useOrder(ask)
  return (
    <div>
      <ol className="answer-cards" aria-labelledby={headingId}>
        {order.flatMap((id, i) => {
          const card = ask.cards.find((each) => each.id === id)
          if (!card) return []
          const first = i === 0 ? input : undefined
          return (
            <Card
              key={id}
              card={card}
              place={i + 1}
              count={order.length}
              first={first}
              onMove={(by) => move(card, by)}
            />
          )
        })}
      </ol>
      <p className="small answer-said" data-wrong={said !== null}>
        {said ?? 'Move a card by its buttons, or by Alt with an arrow key.'}
      </p>
    </div>
  )
}
