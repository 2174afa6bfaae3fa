import type { AnswerLines } from './answer-lines.ts'

export function AnswerBlock({ lines, place }: { readonly lines: AnswerLines; readonly place: number }) {
  const { text, answer, working, slips } = lines
  return (
    <section className="ws-answer">
      <b className="ws-place">{place}</b>
      <div>
        <p>{text}</p>
        <p>
          <b>Answer: {answer}.</b>
          {working !== '' && <> Working: {working}</>}
        </p>
        {slips.length > 0 && (
          <ul>
            {slips.map(({ value, sentence }) => (
              <li key={value + sentence}>
                <b>{value}:</b> {sentence}
              </li>
            ))}
          </ul>
        )}
      </div>
    </section>
  )
}
