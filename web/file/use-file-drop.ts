/** A file dropped anywhere on the page. */
import { useEffect, useState } from 'react'

const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false

/** True while a file hangs over the page. `onFiles` must stay the same function between renders. */
export function useFileDrop(onFiles: (files: readonly File[]) => void): boolean {
  const [over, setOver] = useState(false)
  useEffect(() => {
    // Every element that is passed enters before the one under it leaves, so the page is left at the last leave.
    let inside = 0
    const enter = (event: DragEvent) => {
      if (!hasFiles(event)) return
      inside++
      setOver(true)
    }
    const leave = (event: DragEvent) => {
      if (!hasFiles(event)) return
      inside = Math.max(0, inside - 1)
      if (inside === 0) setOver(false)
    }
    const allow = (event: DragEvent) => {
      if (hasFiles(event)) event.preventDefault()
    }
    const drop = (event: DragEvent) => {
      if (!hasFiles(event)) return
      event.preventDefault()
      inside = 0
      setOver(false)
      onFiles([...event.dataTransfer!.files])
    }
    window.addEventListener('dragenter', enter)
    window.addEventListener('dragleave', leave)
    window.addEventListener('dragover', allow)
    window.addEventListener('drop', drop)
    return () => {
      window.removeEventListener('dragenter', enter)
      window.removeEventListener('dragleave', leave)
      window.removeEventListener('dragover', allow)
      window.removeEventListener('drop', drop)
    }
  }, [onFiles])
  return over
}
