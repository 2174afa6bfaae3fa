/** The width that a figure has to fill [px]. */
import { type RefObject, useLayoutEffect, useRef, useState } from 'react'

export function useWidth<Kind extends HTMLElement>(first = 360): readonly [RefObject<Kind | null>, number] {
  const ref = useRef<Kind>(null)
  const [width, setWidth] = useState(first)
  useLayoutEffect(() => {
    const element = ref.current
    if (!element) return
    const measure = () => {
      if (element.clientWidth > 0) setWidth(element.clientWidth)
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return [ref, width]
}
