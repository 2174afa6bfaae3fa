/** The renderer as the stage wants it. */
import { NeutralToneMapping, VSMShadowMap, WebGLRenderer } from 'three'
import { type QualityLevel, drawsInSoftware } from './quality.ts'

/** A renderer, or null where there is no WebGL. Smoothed edges are left out where the processor draws. */
export function createRenderer(
  canvas: HTMLCanvasElement,
  quality: 'auto' | QualityLevel,
): WebGLRenderer | null {
  const probe = document.createElement('canvas').getContext('webgl2')
  if (probe === null) return null
  const antialias = quality === 'auto' ? !drawsInSoftware(probe) : quality !== 'low'
  probe.getExtension('WEBGL_lose_context')?.loseContext()
  try {
    return prepared(
      new WebGLRenderer({ canvas, antialias, alpha: true, powerPreference: 'high-performance' }),
    )
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

/** Waits until the last picture is really drawn, so that it can be timed. */
export function finishDrawing(renderer: WebGLRenderer, pixel: Uint8Array): void {
  const gl = renderer.getContext()
  gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel)
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
