/** How many questions of each family, by topic. */
import type { Family, Level } from '../../sim/question/family.ts'
import { TOPICS } from './topics.ts'
import { type Wanted, countOf, withCount } from './wanted.ts'

const MOST_OF_ONE = 8

interface FamilyCountsProps {
  readonly families: readonly Family[]
  readonly wanted: readonly Wanted[]
  readonly level: Level
  readonly onChange: (wanted: readonly Wanted[]) => void
}

interface CountProps extends Omit<FamilyCountsProps, 'families'> {
  readonly family: Family
}

function Count({ family: { name, title }, wanted, level, onChange }: CountProps) {
  const change = (text: string) => {
    const count = Math.min(MOST_OF_ONE, Math.max(0, Math.round(Number(text)) || 0))
    onChange(withCount(wanted, { family: name, level }, count))
  }
  const count = countOf(wanted, name)
  return (
    <label className="worksheet-count" data-chosen={count > 0}>
      <span>{title}</span>
      <input
        className="number"
        type="number"
        min={0}
        max={MOST_OF_ONE}
        value={count}
        onChange={(event) => change(event.target.value)}
      />
    </label>
  )
}

export function FamilyCounts({ families, ...rest }: FamilyCountsProps) {
  const topics = TOPICS.map((topic) => ({
    name: topic.name,
    among: topic.families.filter((family) => families.includes(family)),
  })).filter(({ among }) => among.length > 0)
  return (
    <div className="worksheet-families" role="group" aria-label="How many questions of each kind">
      {topics.map(({ name, among }) => (
        <fieldset key={name}>
          <legend>{name}</legend>
          {among.map((family) => (
            <Count key={family.name} family={family} {...rest} />
          ))}
        </fieldset>
      ))}
    </div>
  )
}
