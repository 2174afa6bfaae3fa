/** The questions of a topic, each with what it becomes when it is asked. */
import type { Problem } from '../../sim/machine/problem.ts'
import { Icon } from '../instrument/Icon.tsx'
import { moved } from '../question/moved.ts'
import type { AskedQuestion, Beat, BeatQuestion, BeatStage } from '../store/lesson.ts'
import { EditorBankQuestion } from './EditorBankQuestion.tsx'
import { SelectField, Section } from './EditorFields.tsx'
import { EditorOwnChoice, EditorOwnNumber, EditorOwnWords } from './EditorOwnQuestion.tsx'
import { EditorPreview } from './EditorPreview.tsx'
import { stageWords } from './editor-words.ts'
import { type QuestionKind, newQuestion, questionKind, replaced, withStage, without } from './edit-lesson.ts'

const MOST_QUESTIONS = 6
const KINDS: readonly { readonly value: QuestionKind; readonly text: string }[] = [
  { value: 'bank', text: 'Of the bank, with its answer computed' },
  { value: 'number', text: 'A number of your own' },
  { value: 'choice', text: 'A choice of your own' },
  { value: 'words', text: 'An open question' },
]

interface QuestionsProps {
  readonly beat: Beat
  readonly place: number
  readonly seed: string
  readonly problems: readonly Problem[]
  readonly onShow: (question: number) => void
  readonly onChange: (change: Partial<Beat>, field?: string) => void
}

interface FormProps {
  readonly question: BeatQuestion
  readonly onChange: (question: AskedQuestion, field?: string) => void
}

function Form({ question, onChange }: FormProps) {
  if ('family' in question) return <EditorBankQuestion question={question} onChange={onChange} />
  if ('answer' in question) return <EditorOwnNumber question={question} onChange={onChange} />
  if ('options' in question) return <EditorOwnChoice question={question} onChange={onChange} />
  return <EditorOwnWords question={question} onChange={onChange} />
}

interface StageProps {
  readonly stage: BeatStage | null
  readonly number: number
  readonly onShow: () => void
  readonly onClear: () => void
}

/** Where it is asked: on the topic's stage, or on one that was taken for it. */
function Stage({ stage, number, onShow, onClear }: StageProps) {
  return (
    <div className="editor-question-stage">
      <p className="small">
        {stage ? `On a stage of its own: ${stageWords(stage)}` : 'On the stage of the topic.'}
      </p>
      <div className="editor-buttons">
        <button type="button" className="button" onClick={onShow}>
          Arrange its stage<span className="unseen">: question {number}</span>
        </button>
        {stage && (
          <button type="button" className="button" onClick={onClear}>
            As the topic<span className="unseen">: stage of question {number}</span>
          </button>
        )}
      </div>
    </div>
  )
}

interface ItemProps {
  readonly question: BeatQuestion
  readonly onChange: (question: BeatQuestion, field?: string) => void
  readonly onShow: () => void
  readonly number: number
  readonly seed: string
  readonly problems: readonly Problem[]
  readonly onRemove: () => void
  readonly onEarlier: (() => void) | null
}

function Item({ question, number, seed, problems, onShow, onChange, onRemove, onEarlier }: ItemProps) {
  const stage = question.stage ?? null
  const put = (asked: AskedQuestion, field?: string) => onChange(withStage(asked, stage), field)
  const change = (kind: QuestionKind) => {
    const text = 'text' in question ? question.text : ''
    if (kind !== questionKind(question)) put(newQuestion(kind, text))
  }
  return (
    <li className="editor-question">
      <div className="editor-question-head">
        <b>Question {number}</b>
        {onEarlier && (
          <button type="button" className="button plain" onClick={onEarlier}>
            Earlier<span className="unseen">: question {number}</span>
          </button>
        )}
        <button type="button" className="button plain" onClick={onRemove}>
          Take out<span className="unseen"> question {number}</span>
        </button>
      </div>
      <SelectField label="Kind" value={questionKind(question)} options={KINDS} onChange={change} />
      <Form question={question} onChange={put} />
      <Stage
        stage={stage}
        number={number}
        onShow={onShow}
        onClear={() => onChange(withStage(question, null))}
      />
      <EditorPreview question={question} seed={seed} problems={problems} />
    </li>
  )
}

export function EditorQuestions({ beat, place, seed, problems, onShow, onChange }: QuestionsProps) {
  const { questions } = beat
  const put = (next: readonly BeatQuestion[], field?: string) => onChange({ questions: next }, field)
  return (
    <Section title="Questions">
      <ol className="editor-questions">
        {questions.map((question, i) => (
          <Item
            key={`${i} ${questionKind(question)}`}
            question={question}
            number={i + 1}
            seed={seed}
            problems={problems.filter(({ path }) => path.startsWith(`beats.${place}.questions.${i}`))}
            onChange={(next, field) => put(replaced(questions, i, next), field && `question ${i} ${field}`)}
            onShow={() => onShow(i)}
            onRemove={() => put(without(questions, i))}
            onEarlier={i === 0 ? null : () => put(moved(questions, i, i - 1))}
          />
        ))}
      </ol>
      {questions.length < MOST_QUESTIONS && (
        <button type="button" className="button" onClick={() => put([...questions, newQuestion('bank', '')])}>
          <Icon name="plus" size={16} />
          {questions.length === 0 ? 'Ask a question' : 'Ask another question'}
        </button>
      )}
    </Section>
  )
}
