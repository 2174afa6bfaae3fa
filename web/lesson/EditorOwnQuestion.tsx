/** Questions in the lesson's own words: a number, a choice, or an open one. */
import { useId } from 'react'
import { Icon } from '../instrument/Icon.tsx'
import type { AskedQuestion } from '../store/lesson.ts'
import { NumberField, SelectField, TextField } from './EditorFields.tsx'
import { replaced, without } from './edit-lesson.ts'
import { TOLERANCE_OPTIONS, UNIT_OPTIONS } from './editor-units.ts'

type OwnNumber = Extract<AskedQuestion, { readonly answer: number }>
type OwnChoice = Extract<AskedQuestion, { readonly right: number }>
type OwnWords = Exclude<AskedQuestion, OwnNumber | OwnChoice | { readonly family: string }>

interface OwnProps<Q extends AskedQuestion> {
  readonly question: Q
  readonly onChange: (question: AskedQuestion, field?: string) => void
}

const LONGEST_TEXT = 400
const LONGEST_SENTENCE = 200
const MOST_SLIPS = 8
const MOST_OPTIONS = 6

function Asked<Q extends OwnNumber | OwnChoice | OwnWords>({ question, onChange }: OwnProps<Q>) {
  return (
    <TextField
      label="Question"
      value={question.text}
      most={LONGEST_TEXT}
      rows={2}
      onChange={(text) => onChange({ ...question, text }, 'text')}
    />
  )
}

const Working = <Q extends OwnNumber | OwnChoice>({ question, onChange }: OwnProps<Q>) => (
  <TextField
    label="The way to the answer, in one line"
    value={question.working}
    most={LONGEST_SENTENCE}
    onChange={(working) => onChange({ ...question, working }, 'working')}
  />
)

const Remove = ({ what, onRemove }: { readonly what: string; readonly onRemove: () => void }) => (
  <button type="button" className="button icon" onClick={onRemove}>
    <Icon name="close" size={16} />
    <span className="unseen">Take out {what}</span>
  </button>
)

export const EditorOwnWords = ({ question, onChange }: OwnProps<OwnWords>) => (
  <Asked question={question} onChange={onChange} />
)

function Slips({ question, onChange }: OwnProps<OwnNumber>) {
  const { slips, unit } = question
  const put = (next: OwnNumber['slips'], field?: string) => onChange({ ...question, slips: next }, field)
  return (
    <>
      {slips.map((slip, i) => (
        <div key={i} className="editor-row" data-narrow="first">
          <NumberField
            label={`Wrong answer ${i + 1}`}
            value={slip.value}
            unit={unit}
            onChange={(value) => put(replaced(slips, i, { ...slip, value }), `slip ${i} value`)}
          />
          <TextField
            label={`What leads to it ${i + 1}`}
            value={slip.sentence}
            most={LONGEST_SENTENCE}
            onChange={(sentence) => put(replaced(slips, i, { ...slip, sentence }), `slip ${i} sentence`)}
          />
          <Remove what={`wrong answer ${i + 1}`} onRemove={() => put(without(slips, i))} />
        </div>
      ))}
      {slips.length < MOST_SLIPS && (
        <button
          type="button"
          className="button editor-add"
          onClick={() => put([...slips, { value: 0, sentence: '' }])}
        >
          Add a wrong answer that is to be known
        </button>
      )}
    </>
  )
}

export function EditorOwnNumber({ question, onChange }: OwnProps<OwnNumber>) {
  return (
    <>
      <Asked question={question} onChange={onChange} />
      <div className="editor-parameters">
        <SelectField
          label="Unit"
          value={question.unit}
          options={UNIT_OPTIONS}
          onChange={(unit) => onChange({ ...question, unit })}
        />
        <NumberField
          key={question.unit}
          label="Answer"
          value={question.answer}
          unit={question.unit}
          onChange={(answer) => onChange({ ...question, answer }, 'answer')}
        />
        <SelectField
          label="Counts as right"
          value={question.tolerance}
          options={TOLERANCE_OPTIONS}
          onChange={(tolerance) => onChange({ ...question, tolerance })}
        />
      </div>
      <Working question={question} onChange={onChange} />
      <Slips question={question} onChange={onChange} />
    </>
  )
}

interface OptionProps extends OwnProps<OwnChoice> {
  readonly place: number
  /** Of the radio buttons that say which one is right */
  readonly name: string
}

function OptionRow({ question, place, name, onChange }: OptionProps) {
  const { options, right } = question
  const option = options[place]
  if (!option) return null
  const write = (change: Partial<typeof option>, field: string) =>
    onChange({ ...question, options: replaced(options, place, { ...option, ...change }) }, field)
  const remove = () => {
    const still = Math.min(right > place ? right - 1 : right, options.length - 2)
    onChange({ ...question, options: without(options, place), right: still })
  }
  const isRight = right === place
  return (
    <div className="editor-option">
      <label className="editor-check">
        <input
          type="radio"
          name={name}
          checked={isRight}
          onChange={() => onChange({ ...question, right: place })}
        />
        right<span className="unseen">: option {place + 1}</span>
      </label>
      <div className="editor-row" data-only={isRight ? 'first' : undefined}>
        <TextField
          label={`Option ${place + 1}`}
          value={option.text}
          most={LONGEST_SENTENCE}
          onChange={(text) => write({ text }, `option ${place} text`)}
        />
        {!isRight && (
          <TextField
            label={`Said where option ${place + 1} is chosen`}
            value={option.sentence}
            most={LONGEST_SENTENCE}
            onChange={(sentence) => write({ sentence }, `option ${place} sentence`)}
          />
        )}
        {options.length > 2 && <Remove what={`option ${place + 1}`} onRemove={remove} />}
      </div>
    </div>
  )
}

export function EditorOwnChoice({ question, onChange }: OwnProps<OwnChoice>) {
  const name = useId()
  const { options } = question
  return (
    <>
      <Asked question={question} onChange={onChange} />
      {options.map((_, place) => (
        <OptionRow key={place} question={question} place={place} name={name} onChange={onChange} />
      ))}
      {options.length < MOST_OPTIONS && (
        <button
          type="button"
          className="button editor-add"
          onClick={() => onChange({ ...question, options: [...options, { text: '', sentence: '' }] })}
        >
          Add an option
        </button>
      )}
      <Working question={question} onChange={onChange} />
    </>
  )
}
