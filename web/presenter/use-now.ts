/** The time of day [ms since 1970], told anew each second while it is wanted. */
import { useEffect, useState } from 'react'

export function useNow(wanted: boolean): number {
  const [now, setNow] = useState(Date.now)
  useEffect(() => {
    setNow(Date.now())
    if (!wanted) return undefined
    const timer = setInterval(() => setNow(Date.now()), 1000)
    return () => clearInterval(timer)
  }, [wanted])
  return now
}
