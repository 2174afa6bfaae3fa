/** A choice as a leva input. */
import { type LevaInputProps, createPlugin, useInputContext } from 'leva/plugin'
import { useMachine } from '../frame/workshop.ts'
import type { Choice } from '../instrument/choice.ts'
import { FieldRow } from './FieldRow.tsx'
import { keepFocus } from './go-to-field.ts'
import { fieldId } from './ids.ts'

interface ChoiceSettings {
  readonly choice: Choice
}

function ChoiceInput() {
  const { value, onUpdate, settings } = useInputContext<LevaInputProps<string, ChoiceSettings>>()
  const { choice } = settings
  const machine = useMachine((now) => now)
  const id = fieldId(choice.path)
  return (
    <FieldRow id={id} path={choice.path} label={choice.label} help={choice.help} refused={null}>
      <select
        id={id}
        className="parameter-box"
        value={value}
        onChange={(event) => {
          onUpdate(event.target.value)
          keepFocus(choice.path)
        }}
      >
        {choice.options(machine).map((option) => (
          <option key={option.value} value={option.value}>
            {option.words}
          </option>
        ))}
      </select>
    </FieldRow>
  )
}

export const choiceInput = createPlugin<ChoiceSettings & { readonly first: string }, string, ChoiceSettings>({
  component: ChoiceInput,
  normalize: ({ first, choice }) => ({ value: first, settings: { choice } }),
})
