/** A question of the bank: which family, and the numbers that it is asked with. */
import { FAMILIES, familyNamed } from '../../sim/question/bank.ts'
import type { Family, Given, Level } from '../../sim/question/family.ts'
import type { AskedQuestion } from '../store/lesson.ts'
import { NumberField, SelectField } from './EditorFields.tsx'
import { parameterWords } from './editor-parameters.ts'

type BankQuestion = Extract<AskedQuestion, { readonly family: string }>

interface BankQuestionProps {
  readonly question: BankQuestion
  readonly onChange: (question: AskedQuestion, field?: string) => void
}

const LEVELS: readonly Level[] = [1, 2, 3]
const FAMILY_OPTIONS = FAMILIES.map(({ name, title }) => ({ value: name, text: title }))
const LEVEL_OPTIONS = LEVELS.map((level) => ({ value: level, text: `Level ${level}` }))
const SOURCES = [
  { value: 'own', text: 'Chosen here' },
  { value: 'drawn', text: 'Drawn by the seed of the lesson' },
] as const

/** All words that a parameter may have, whatever the level. */
function wordsOf(family: Family, name: string, given: Given): readonly string[] {
  const parameter = family.parameters.find((each) => each.name === name)
  const values = parameter ? LEVELS.flatMap((level) => parameter.values(level, given)) : []
  return [...new Set(values.filter((each) => typeof each === 'string'))]
}

interface ParametersProps {
  readonly family: Family
  readonly given: Given
  readonly onChange: (given: Given, field: string) => void
}

function Parameters({ family, given, onChange }: ParametersProps) {
  return (
    <div className="editor-parameters">
      {family.parameters.map(({ name }) => {
        const label = parameterWords(family.name, name)
        const value = given[name] ?? family.example[name] ?? 0
        const write = (next: number | string) => onChange({ ...given, [name]: next }, name)
        if (typeof value === 'number')
          return <NumberField key={name} label={label} value={value} onChange={write} />
        const options = wordsOf(family, name, given).map((word) => ({ value: word, text: word || 'none' }))
        return <SelectField key={name} label={label} value={value} options={options} onChange={write} />
      })}
    </div>
  )
}

interface DrawnProps {
  readonly question: Extract<BankQuestion, { readonly index: number }>
  readonly onChange: BankQuestionProps['onChange']
}

const Drawn = ({ question, onChange }: DrawnProps) => (
  <div className="editor-parameters">
    <SelectField
      label="Level"
      value={question.level}
      options={LEVEL_OPTIONS}
      onChange={(level) => onChange({ ...question, level })}
    />
    <NumberField
      label="Which of them, from 0"
      value={question.index}
      onChange={(index) => onChange({ ...question, index }, 'index')}
    />
  </div>
)

export function EditorBankQuestion({ question, onChange }: BankQuestionProps) {
  const family = familyNamed(question.family)
  const drawn = 'index' in question
  const choose = (name: string) => {
    const next = familyNamed(name)
    if (!next) return
    onChange(drawn ? { ...question, family: name } : { family: name, given: next.example })
  }
  const source = (value: 'own' | 'drawn') => {
    if (!family || (value === 'drawn') === drawn) return
    onChange(
      value === 'drawn'
        ? { family: family.name, index: 0, level: 1 }
        : { family: family.name, given: family.example },
    )
  }
  return (
    <>
      <div className="editor-parameters" data-first="wide">
        <SelectField label="Family" value={question.family} options={FAMILY_OPTIONS} onChange={choose} />
        <SelectField label="Numbers" value={drawn ? 'drawn' : 'own'} options={SOURCES} onChange={source} />
      </div>
      {drawn ? (
        <Drawn question={question} onChange={onChange} />
      ) : (
        family && (
          <Parameters
            key={family.name}
            family={family}
            given={question.given}
            onChange={(given, field) => onChange({ family: family.name, given }, field)}
          />
        )
      )}
    </>
  )
}
