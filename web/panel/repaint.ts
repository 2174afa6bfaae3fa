/** Draws a canvas again when its size, the theme or the fonts change, or for paper; returns what ends it. */
export function repaintOn(canvas: HTMLCanvasElement, again: () => void): () => void {
  const sizes = new ResizeObserver(again)
  sizes.observe(canvas)
  const theme = new MutationObserver(again)
  theme.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] })
  document.fonts.addEventListener('loadingdone', again)
  const paper = matchMedia('print')
  paper.addEventListener('change', again)
  return () => {
    sizes.disconnect()
    theme.disconnect()
    document.fonts.removeEventListener('loadingdone', again)
    paper.removeEventListener('change', again)
  }
}
