/** A figure of the page as a picture by itself: what the style sheet says is written into it. */

const KEPT_STYLES = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'opacity',
  'font-family',
  'font-size',
  'font-weight',
  'text-anchor',
  'dominant-baseline',
  'paint-order',
  'visibility',
] as const

function keepStyles(from: Element, to: Element): void {
  const style = getComputedStyle(from)
  for (const name of KEPT_STYLES) to.setAttribute(name, style.getPropertyValue(name))
  if (from instanceof SVGTextElement) keepLength(from, to)
  to.removeAttribute('class')
  to.removeAttribute('style')
  for (let i = 0; i < from.children.length; i++) keepStyles(from.children[i]!, to.children[i]!)
}

/** The page's own fonts do not go with a picture: words keep their room in whatever stands in for them. */
function keepLength(from: SVGTextElement, to: Element): void {
  to.setAttribute('textLength', from.getComputedTextLength().toFixed(1))
  to.setAttribute('lengthAdjust', 'spacingAndGlyphs')
}

/** SVG text that looks as it does now, on the page's own ground. */
export function svgText(figure: SVGSVGElement): string {
  const { width, height } = figure.getBoundingClientRect()
  const copy = figure.cloneNode(true) as SVGSVGElement
  keepStyles(figure, copy)
  for (const handle of copy.querySelectorAll('[data-handle]')) handle.remove()
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
  copy.setAttribute('width', String(width))
  copy.setAttribute('height', String(height))
  if (!copy.hasAttribute('viewBox')) copy.setAttribute('viewBox', `0 0 ${width} ${height}`)
  const ground = document.createElementNS('http://www.w3.org/2000/svg', 'rect')
  ground.setAttribute('width', '100%')
  ground.setAttribute('height', '100%')
  ground.setAttribute('fill', getComputedStyle(document.body).backgroundColor)
  copy.prepend(ground)
  return new XMLSerializer().serializeToString(copy)
}

const PIXELS_PER_PIXEL = 3

/** The same as a PNG, fine enough to print. */
export async function pngOf(figure: SVGSVGElement): Promise<Blob> {
  const { width, height } = figure.getBoundingClientRect()
  const image = new Image()
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgText(figure))}`
  await image.decode()
  const canvas = document.createElement('canvas')
  canvas.width = Math.ceil(width * PIXELS_PER_PIXEL)
  canvas.height = Math.ceil(height * PIXELS_PER_PIXEL)
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height)
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('no picture was made'))), 'image/png')
  })
}
