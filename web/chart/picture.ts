/** A figure of the page as a picture by itself: what the style sheet says is written into it. */

const SVG = 'http://www.w3.org/2000/svg'

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

/** Room around the picture, also for what stands out over the figure's edge [px] */
const MARGIN = 16

interface Size {
  readonly width: number
  readonly height: number
}

function sizeOf(figure: SVGSVGElement): Size {
  const { width, height } = figure.getBoundingClientRect()
  return { width: width + 2 * MARGIN, height: height + 2 * MARGIN }
}

/** SVG text that looks as it does now, named as it is, on the page's own ground. */
export function svgText(figure: SVGSVGElement): string {
  const { width, height } = sizeOf(figure)
  const copy = figure.cloneNode(true) as SVGSVGElement
  keepStyles(figure, copy)
  for (const handle of copy.querySelectorAll('[data-handle]')) handle.remove()
  copy.setAttribute('xmlns', SVG)
  copy.setAttribute('width', String(width))
  copy.setAttribute('height', String(height))
  copy.setAttribute('viewBox', `${-MARGIN} ${-MARGIN} ${width} ${height}`)
  copy.prepend(titleOf(figure), groundOf(figure, { width, height }))
  return new XMLSerializer().serializeToString(copy)
}

function titleOf({ ownerDocument, ariaLabel }: SVGSVGElement): Element {
  const title = ownerDocument.createElementNS(SVG, 'title')
  title.textContent = ariaLabel
  return title
}

function groundOf({ ownerDocument }: SVGSVGElement, { width, height }: Size): Element {
  const ground = ownerDocument.createElementNS(SVG, 'rect')
  const { backgroundColor } = getComputedStyle(ownerDocument.body)
  const places = { x: -MARGIN, y: -MARGIN, width, height, fill: backgroundColor }
  for (const [name, value] of Object.entries(places)) ground.setAttribute(name, String(value))
  return ground
}

const PIXELS_PER_PIXEL = 3

/** The same as a PNG, fine enough to print. */
export async function pngOf(figure: SVGSVGElement): Promise<Blob> {
  const { width, height } = sizeOf(figure)
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
