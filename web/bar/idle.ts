/** True after a while without a pointer's move or a key, while it is asked for. */
import { useEffect, useState } from 'react'

const QUIET = 3000

export function useIdle(wanted: boolean): boolean {
  const [idle, setIdle] = useState(false)
  useEffect(() => {
    if (!wanted) return undefined
    let timer = setTimeout(() => setIdle(true), QUIET)
    const busy = () => {
      clearTimeout(timer)
      timer = setTimeout(() => setIdle(true), QUIET)
      setIdle(false)
    }
    addEventListener('pointermove', busy)
    addEventListener('keydown', busy)
    return () => {
      clearTimeout(timer)
      removeEventListener('pointermove', busy)
      removeEventListener('keydown', busy)
    }
  }, [wanted])
  return wanted && idle
}
