/** The renderer as the stage wants it. */
import { NeutralToneMapping, VSMShadowMap, WebGLRenderer } from 'three'
import type { QualityLevel } from './quality.ts'

/**
 * A renderer, or null where there is no WebGL. Smoothed edges are asked for only with a chosen quality: where the
 * quality finds itself they come from drawing larger than the screen, which a slow machine can leave out again.
 */
export function createRenderer(
  canvas: HTMLCanvasElement,
  quality: 'auto' | QualityLevel,
): WebGLRenderer | null {
  const antialias = quality === 'medium' || quality === 'high'
  const powerPreference = 'high-performance'
  const context = canvas.getContext('webgl2', { alpha: true, antialias, stencil: false, powerPreference })
  if (context === null) return null
  try {
    return prepared(new WebGLRenderer({ canvas, context, antialias, alpha: true, powerPreference }))
  } catch {
    return null
  }
}

function prepared(renderer: WebGLRenderer): WebGLRenderer {
  renderer.setClearColor(0x000000, 0)
  renderer.toneMapping = NeutralToneMapping
  renderer.shadowMap.type = VSMShadowMap
  renderer.shadowMap.enabled = true
  renderer.shadowMap.autoUpdate = false
  return renderer
}

export function createCanvas(container: HTMLElement): HTMLCanvasElement {
  const canvas = document.createElement('canvas')
  Object.assign(canvas.style, { display: 'block', width: '100%', height: '100%', touchAction: 'none' })
  canvas.tabIndex = 0
  canvas.setAttribute('role', 'application')
  canvas.setAttribute(
    'aria-label',
    'Machine in 3D. Shift with arrow keys turns the view, plus and minus zoom',
  )
  container.append(canvas)
  return canvas
}
