import type { AnswerLines } from './answer-lines.ts'
import { glued } from './glued.ts'

export function AnswerBlock({ lines, place }: { readonly lines: AnswerLines; readonly place: number }) {
  const { text, answer, working, slips } = lines
  return (
    <section className="ws-answer">
      <b className="ws-place">{place}</b>
      <div>
        <p>{glued(text)}</p>
        <p>
          <b>Answer: {glued(answer)}.</b>
          {working !== '' && <> Working: {working}</>}
        </p>
        {slips.length > 0 && (
          <ul>
            {slips.map(({ value, sentence }) => (
              <li key={value + sentence}>
                <b>{glued(value)}:</b> {glued(sentence)}
              </li>
            ))}
          </ul>
        )}
      </div>
    </section>
  )
}
