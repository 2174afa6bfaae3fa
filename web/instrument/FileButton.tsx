/** A button that asks the browser for files, one or several. */
import { useRef } from 'react'
import { Icon } from './Icon.tsx'

interface FileButtonProps {
  readonly text: string
  /** What kind of file is asked for, for readers of screens */
  readonly label: string
  readonly onFiles: (files: readonly File[]) => void
}

export function FileButton({ text, label, onFiles }: FileButtonProps) {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <button type="button" className="button" onClick={() => input.current?.click()}>
        <Icon name="file" />
        {text}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        aria-label={label}
        accept=".json,application/json"
        onChange={({ target }) => {
          onFiles([...(target.files ?? [])])
          target.value = ''
        }}
      />
    </>
  )
}
