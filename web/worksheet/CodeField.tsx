/** A sheet that was printed before, brought back by its code. */
import { useState } from 'react'
import { orderFromCode } from './from-code.ts'
import type { Order } from './order.ts'
import type { OrderProps } from './SourceChoice.tsx'

interface CodeFieldProps extends Omit<OrderProps, 'onChange'> {
  /** With the version that the code was printed on; 0 where there is but one. */
  readonly onBack: (order: Order, version: number) => void
}

export function CodeField({ order, at, onBack }: CodeFieldProps) {
  const [text, setText] = useState('')
  const [said, setSaid] = useState('')
  const open = () => {
    const found = orderFromCode(text, order, at)
    if ('problem' in found) {
      setSaid(found.problem)
      return
    }
    onBack(found.order, found.version)
    setSaid(
      found.version === 0
        ? 'Here is that sheet again.'
        : `Here is version ${found.version} of that sheet again.`,
    )
  }
  return (
    <form
      className="worksheet-code"
      onSubmit={(event) => {
        event.preventDefault()
        open()
      }}
    >
      <label className="field">
        <span>Sheet code</span>
        <input
          type="text"
          className="number"
          autoComplete="off"
          autoCapitalize="characters"
          spellCheck={false}
          size={16}
          value={text}
          aria-describedby="worksheet-code-said"
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      <button type="submit" className="button" disabled={text.trim() === ''}>
        Bring it back
      </button>
      <p className="small" id="worksheet-code-said" role="status">
        {said}
      </p>
    </form>
  )
}
