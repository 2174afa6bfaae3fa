/** A number with its unit as a leva input: typed as text with units, stepped by arrow keys, or dragged by its symbol. */
import { type LevaInputProps, createPlugin, useInputContext } from 'leva/plugin'
import { type KeyboardEvent, useEffect, useRef, useState } from 'react'
import type { Machine } from '../../sim/machine/machine.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { FieldRow } from './FieldRow.tsx'
import { FieldSymbol } from './FieldSymbol.tsx'
import { itemOf, readFieldText, stepped, unitText } from '../instrument/field-text.ts'
import { fieldId } from './ids.ts'
import {
  type QuantityInput,
  type QuantitySettings,
  type Refusal,
  format,
  normalize,
  refusal,
  sanitize,
} from './quantity-plugin.ts'

/** Letters of a unit that leave room for the number beside it. */
const LONGEST_IN_FIELD = 6

const ARROW_STEPS: Record<string, number> = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }

/** The text while it is being typed, and its gesture: one entry of undo from the first change to leaving the field. */
function useTyping() {
  const { value, onUpdate, settings, emitOnEditStart, emitOnEditEnd } =
    useInputContext<LevaInputProps<number, QuantitySettings, string>>()
  const [draft, setDraft] = useState<string | null>(null)
  const [refused, setRefused] = useState<Refusal | null>(null)
  const { document: bench } = useWorkshop()
  const input = useRef<HTMLInputElement>(null)
  const before = useRef<number | null>(null)
  const newest = useRef('')

  useEffect(() => {
    if (document.activeElement === input.current) return
    setDraft(null)
    setRefused(null)
  }, [value])

  const take = (next: number) => {
    if (before.current === null) {
      before.current = value
      emitOnEditStart()
    }
    const why = refusal(settings, next)
    setRefused(why)
    if (why === null) onUpdate(next)
  }
  const type = (text: string) => {
    newest.current = text
    setDraft(text)
    readFieldText(text, settings.field.unit, (read) => {
      if (newest.current !== text) return
      if ('problem' in read) setRefused({ words: read.problem, freed: null })
      else take(read.value)
    })
  }
  const finish = () => {
    if (before.current !== null) emitOnEditEnd()
    before.current = null
    if (refused === null) setDraft(null)
  }
  const step = (steps: number) => {
    setDraft(null)
    take(stepped(value, steps, settings.field))
  }
  const giveUp = () => {
    newest.current = ''
    if (before.current !== null) onUpdate(before.current)
    setDraft(null)
    setRefused(null)
    if (before.current !== null) emitOnEditEnd()
    before.current = null
  }
  const free = (freed: Machine) => {
    bench.edit(() => freed)
    setDraft(null)
    setRefused(null)
    if (before.current !== null) emitOnEditEnd()
    before.current = null
    input.current?.focus()
  }
  return { text: draft ?? format(value), refused, input, type, finish, step, giveUp, free, settings }
}

function QuantityField() {
  const { text, refused, input, type, finish, step, giveUp, free, settings } = useTyping()
  const freed = refused?.freed
  const { announcer } = useWorkshop()
  const { field } = settings
  const id = fieldId(field.path)
  const isLong = field.unit.length > LONGEST_IN_FIELD
  const unit = (
    <span className="parameter-unit" id={`${id}-unit`}>
      {unitText(field.unit)}
    </span>
  )

  const onKeyDown = (event: KeyboardEvent) => {
    const steps = ARROW_STEPS[event.key]
    if (steps !== undefined) {
      event.preventDefault()
      step(steps)
    } else if (event.key === 'Enter') finish()
    else if (event.key === 'Escape') {
      event.stopPropagation()
      giveUp()
    }
  }
  return (
    <FieldRow
      id={id}
      path={field.path}
      label={field.label}
      item={itemOf(field)}
      heading={settings.heading}
      unit={isLong && unit}
      help={fieldHelp(settings)}
      refused={refused?.words ?? null}
      cure={freed && { label: 'Let the centre distance follow', act: () => free(freed) }}
    >
      <span className="parameter-box">
        <FieldSymbol symbol={field.symbol} onSteps={step} onEnd={finish} />
        <input
          id={id}
          ref={input}
          className="number"
          type="text"
          inputMode="decimal"
          autoComplete="off"
          spellCheck={false}
          value={text}
          aria-invalid={refused !== null}
          aria-describedby={`${id}-unit ${id}-said`}
          onChange={(event) => type(event.target.value)}
          onBlur={() => {
            finish()
            if (refused !== null) announcer.say(`${field.label}: not used, ${refused.words}`)
          }}
          onKeyDown={onKeyDown}
        />
        {!isLong && unit}
      </span>
    </FieldRow>
  )
}

function fieldHelp({ field }: QuantitySettings): string {
  const unit = unitText(field.unit)
  const withUnit = (value: number) => `${format(value)}${unit && unit !== '°' ? ' ' : ''}${unit}`
  const typical = field.typical
    ? ` Usual values go from ${withUnit(field.typical[0])} to ${withUnit(field.typical[1])}.`
    : ''
  return `${field.help} Allowed: ${withUnit(field.min)} to ${withUnit(field.max)}.${typical} Source: ${field.source}.`
}

export const quantityInput = createPlugin<QuantityInput, number, QuantitySettings>({
  component: QuantityField,
  normalize,
  sanitize,
  format,
})
