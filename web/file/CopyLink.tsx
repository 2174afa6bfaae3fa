/** Copies the link to what is on screen; where the clipboard is refused, the link stands selected in a field. */
import { useEffect, useId, useRef, useState } from 'react'
import { Icon } from '../instrument/Icon.tsx'
import { MOST_LINK } from './write-link.ts'

interface CopyLinkProps {
  /** The whole address, as it is now. */
  readonly address: () => string
  readonly say: (sentence: string) => void
}

function LinkField({ link }: { readonly link: string }) {
  const field = useRef<HTMLInputElement>(null)
  useEffect(() => {
    field.current?.focus()
    field.current?.select()
  }, [link])
  return (
    <label className="field link-field">
      <span>The clipboard is closed to this page. Copy from here:</span>
      <input ref={field} type="text" readOnly value={link} />
    </label>
  )
}

export function CopyLink({ address, say }: CopyLinkProps) {
  const [link, setLink] = useState(address)
  const [outcome, setOutcome] = useState<'none' | 'copied' | 'refused'>('none')
  const id = useId()
  const tooLong = link.length > MOST_LINK

  const copy = async () => {
    const now = address()
    setLink(now)
    if (now.length > MOST_LINK) return
    try {
      await navigator.clipboard.writeText(now)
      setOutcome('copied')
      say(`Link copied, ${now.length} characters.`)
    } catch {
      setOutcome('refused')
      say('')
    }
  }

  return (
    <>
      <button
        type="button"
        className="button"
        aria-disabled={tooLong}
        aria-describedby={id}
        onClick={() => void copy()}
      >
        <Icon name={outcome === 'copied' ? 'check' : 'link'} />
        Copy the link
      </button>
      <p className="small link-length" id={id}>
        {tooLong
          ? `The link would have ${link.length} characters, and at most ${MOST_LINK} are read. Save to a file instead.`
          : `The link has ${link.length} characters.`}
      </p>
      {outcome === 'refused' && <LinkField link={link} />}
    </>
  )
}
