/** Where the questions come from, and what else there is to learn with. */
import { useStore } from 'zustand'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { Popover } from '../instrument/Popover.tsx'
import type { Predict, Source } from '../store/predict.ts'
import type { Sheet } from '../store/view.ts'
import { ownCount } from './own-questions.ts'
import { chooseSource } from './session.ts'
import './source.css'

const NAMES: Readonly<Record<Source, string>> = {
  machine: 'This machine',
  practice: 'Practice',
  set: 'Set of questions',
}

const ABOUT: Readonly<Record<Source, string>> = {
  machine: 'About the machine on the bench, with its own counts.',
  practice: 'All kinds, spaced by what was right. New numbers each time.',
  set: 'The same for everybody who has the link or the sheet.',
}

const SHEETS: readonly { readonly sheet: Sheet; readonly name: string }[] = [
  { sheet: 'lessons', name: 'Lessons' },
  { sheet: 'worksheet', name: 'Worksheet' },
  { sheet: 'record', name: 'My record' },
]

/** "3 of 8"; nothing in practice, which has no end. */
function placeText({ source, own, set }: Predict): string {
  if (source === 'set' && set) return `${set.at + 1} of ${set.items.length}`
  return source === 'machine' ? `${(own % ownCount) + 1} of ${ownCount}` : ''
}

export function SourceChooser() {
  const workshop = useWorkshop()
  const predict = useStore(workshop.predict)
  const { source, set, why } = predict
  const sources: readonly Source[] = set ? ['machine', 'practice', 'set'] : ['machine', 'practice']
  return (
    <div className="source">
      <Popover key={`${source} ${predict.run}`} label={NAMES[source]} icon="down" side="below">
        <div className="source-list" role="group" aria-label="Questions from">
          {sources.map((each) => (
            <button
              key={each}
              type="button"
              className="source-row"
              aria-pressed={each === source}
              onClick={() => each !== source && chooseSource(workshop, each)}
            >
              <Icon name={each === source ? 'check' : 'ring'} size={16} />
              <span>
                <b>{NAMES[each]}</b>
                <span className="small">{ABOUT[each]}</span>
              </span>
            </button>
          ))}
        </div>
        <div className="source-sheets">
          {SHEETS.map(({ sheet, name }) => (
            <button
              key={sheet}
              type="button"
              className="button"
              onClick={() => workshop.view.setState({ sheet })}
            >
              {name}
            </button>
          ))}
        </div>
      </Popover>
      <p className="small">{source === 'practice' ? why : placeText(predict)}</p>
    </div>
  )
}
