import { useSyncExternalStore } from 'react'

const query = () => matchMedia('(prefers-reduced-motion: reduce)')

const subscribe = (changed: () => void) => {
  const media = query()
  media.addEventListener('change', changed)
  return () => media.removeEventListener('change', changed)
}

export const useReducedMotion = (): boolean => useSyncExternalStore(subscribe, () => query().matches)
