/** How much of the stage is covered by what stands over it, measured from the page itself [px]. */
import { useEffect, useState } from 'react'
import type { FreeArea } from '../scene/stage-props.ts'

const NONE: FreeArea = { left: 0, top: 0, right: 0, bottom: 0 }

/** On a tablet the caption is a strip, so that what covers the left elsewhere covers the top there. */
const strip = (): boolean =>
  matchMedia('(min-width: 768px) and (max-width: 1199px)').matches &&
  document.querySelector('.app[data-large="true"]') === null

/** On a phone all of it stands below the stage, or goes by behind it where the stage stays in sight. */
const below = (): boolean => matchMedia('(max-width: 767px)').matches

/** Elements marked data-covers="left" and so on, where they overlap the stage; a column stays one on a tablet. */
function measure(): FreeArea {
  const stage = document.querySelector('.stage')?.getBoundingClientRect()
  if (!stage || below()) return NONE
  const area = { ...NONE }
  for (const element of document.querySelectorAll<HTMLElement>('[data-covers]')) {
    const box = element.getBoundingClientRect()
    const apart =
      box.right <= stage.left || box.left >= stage.right || box.bottom <= stage.top || box.top >= stage.bottom
    if (apart || box.width === 0) continue
    const covers = element.dataset['covers']
    if (covers === 'column' || (covers === 'left' && !strip()))
      area.left = Math.max(area.left, box.right - stage.left)
    else if (covers === 'right') area.right = Math.max(area.right, stage.right - box.left)
    else if (covers !== 'nothing') area.top = Math.max(area.top, box.bottom - stage.top)
  }
  return area
}

const same = (a: FreeArea, b: FreeArea) =>
  a.left === b.left && a.top === b.top && a.right === b.right && a.bottom === b.bottom

export function useFreeArea(): FreeArea {
  const [area, setArea] = useState(NONE)
  useEffect(() => {
    const update = () =>
      setArea((last) => {
        const now = measure()
        return same(last, now) ? last : now
      })
    const sizes = new ResizeObserver(update)
    const watch = () => {
      sizes.disconnect()
      for (const element of document.querySelectorAll('.stage, [data-covers]')) sizes.observe(element)
      update()
    }
    const nodes = new MutationObserver(watch)
    const app = document.querySelector('.app')
    if (app)
      nodes.observe(app, { childList: true, attributes: true, attributeFilter: ['data-way', 'data-large'] })
    watch()
    return () => {
      sizes.disconnect()
      nodes.disconnect()
    }
  }, [])
  return area
}
