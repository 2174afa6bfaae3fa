/** What the questions of a sheet are taken from. */
import type { Level } from '../../sim/question/family.ts'
import { FAMILIES } from '../../sim/question/bank.ts'
import { counted } from '../../sim/question/value-text.ts'
import { Choice } from '../question/Choice.tsx'
import type { Lesson } from '../store/lesson.ts'
import { FamilyCounts } from './FamilyCounts.tsx'
import { MACHINE_FAMILIES } from './about-machine.ts'
import type { AtHand, Order, Source } from './order.ts'
import { questionsIn } from './sheets.ts'
import { inOwnWords, wantedIn } from './wanted.ts'

export interface OrderProps {
  readonly order: Order
  readonly at: AtHand
  readonly onChange: (change: Partial<Order>) => void
}

const SOURCES: readonly { readonly value: Source; readonly label: string }[] = [
  { value: 'lesson', label: 'A lesson' },
  { value: 'families', label: 'Chosen kinds' },
  { value: 'machine', label: 'This machine' },
]
const LEVELS: readonly { readonly value: Level; readonly label: string }[] = [
  { value: 1, label: '1' },
  { value: 2, label: '2' },
  { value: 3, label: '3' },
]

const NUMBERS = [
  { value: 'own', label: 'Its own numbers' },
  { value: 'seed', label: 'Others, by a seed' },
] as const

/** Only questions of the bank can have other numbers. */
function otherNumbers(lesson: Lesson): string {
  const own = inOwnWords(lesson)
  const stay =
    own === 0
      ? ''
      : ` ${counted(own, 'question')} in the lesson’s own words ${own === 1 ? 'is' : 'are'} left out.`
  return `${counted(wantedIn(lesson).length, 'question')} of the bank, each with numbers by the seed.${stay}`
}

function LessonField({ order, at, onChange }: OrderProps) {
  const found = at.lessons.find(({ lesson }) => lesson.id === order.lesson)
  return (
    <>
      <label className="field worksheet-wide">
        <span>Lesson</span>
        <select value={order.lesson} onChange={(event) => onChange({ lesson: event.target.value })}>
          <option value="">Choose one</option>
          {at.lessons.map(({ lesson }) => (
            <option key={lesson.id} value={lesson.id}>
              {lesson.name}
            </option>
          ))}
        </select>
      </label>
      {found && (
        <Choice
          name="worksheet-numbers"
          question="Questions with"
          options={NUMBERS}
          chosen={order.ownNumbers ? 'own' : 'seed'}
          onChoose={(chosen) => onChange({ ownNumbers: chosen === 'own' })}
        />
      )}
      {found && (
        <p className="small">
          {order.ownNumbers
            ? `All ${counted(questionsIn(found.lesson).length, 'question')}, as the lesson asks them.`
            : otherNumbers(found.lesson)}
        </p>
      )}
    </>
  )
}

function LevelField({ order, onChange }: OrderProps) {
  const change = (level: Level) => {
    const at = (all: Order['families']) => all.map(({ family }) => ({ family, level }))
    onChange({ level, families: at(order.families), aboutMachine: at(order.aboutMachine) })
  }
  return (
    <Choice name="worksheet-level" question="Level" options={LEVELS} chosen={order.level} onChoose={change} />
  )
}

export function SourceChoice(props: OrderProps) {
  const { order, at, onChange } = props
  const { wormStarts, wheelTeeth } = at.machine.gearing
  return (
    <>
      <div className="worksheet-source">
        <Choice
          name="worksheet-source"
          question="Questions from"
          options={SOURCES}
          chosen={order.from}
          onChoose={(from) => onChange({ from })}
        />
      </div>
      {order.from === 'lesson' && <LessonField {...props} />}
      {order.from !== 'lesson' && <LevelField {...props} />}
      {order.from === 'families' && (
        <FamilyCounts
          families={FAMILIES}
          wanted={order.families}
          level={order.level}
          onChange={(families) => onChange({ families })}
        />
      )}
      {order.from === 'machine' && (
        <>
          <p className="small">
            {at.machine.name}: {counted(wormStarts, 'start')}, {counted(wheelTeeth, 'tooth', 'teeth')}
          </p>
          <FamilyCounts
            families={MACHINE_FAMILIES}
            wanted={order.aboutMachine}
            level={order.level}
            onChange={(aboutMachine) => onChange({ aboutMachine })}
          />
        </>
      )}
    </>
  )
}
