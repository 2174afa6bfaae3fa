/** What reads an answer as it is typed. It is fetched with the first question; until then plain numbers are read. */
import { useEffect, useState } from 'react'
import type { Entry } from '../../sim/quantity/entry.ts'

export type EntryReader = (text: string, unit: string) => Entry

const PLAIN = /^\s*[-−]?(?:\d+\.?\d*|\.\d+)\s*$/

const plainReader: EntryReader = (text, unit) => {
  // up to 1 means another thing where per cent are asked
  if (PLAIN.test(text) && unit !== '%') return { value: Number(text.replace('−', '-')) }
  return text.trim() === ''
    ? { code: 'empty', message: 'Write a number.' }
    : {
        code: 'unreadable',
        message: 'Write a plain number for now; what reads sums and units is not here yet.',
      }
}

/** `whole`: it reads units and sums too. */
export function useEntryReader(): { readonly read: EntryReader; readonly whole: boolean } {
  const [reader, setReader] = useState({ read: plainReader, whole: false })
  useEffect(() => {
    let here = true
    import('../../sim/quantity/entry.ts')
      .then(({ readEntry }) => here && setReader({ read: readEntry, whole: true }))
      // without it, plain numbers still do
      .catch(() => undefined)
    return () => {
      here = false
    }
  }, [])
  return reader
}
