/** Words that stand at places of the picture: elements over the canvas that follow it and keep clear of each other. */
import { Vector3 } from 'three'
import type { CameraRig } from '../camera-rig.ts'
import type { FreeArea } from '../stage-props.ts'
import './signs.css'

export interface Label {
  readonly text: string
  readonly at: Vector3
  /** It stands on the far side from this point. */
  readonly from: Vector3
  /** Left out where there is little room. */
  readonly minor: boolean
}

export interface Labels {
  /** `roomy` - whether the minor ones are shown as well */
  place(rig: CameraRig, shown: boolean, roomy: boolean): void
  dispose(): void
}

/** Between the place and the words [px] */
const AWAY = 5
/** Moves smaller than this are not worth a change of style [px]. */
const STIR = 0.25
/** Rounds in which words that lie on others make way, and the room they keep [px] */
const ROUNDS = 12
const ROOM = 4
/** Where words wait that are left out [px] */
const OUT_OF_THE_WAY = -10_000
/** From what covers the picture, and from its edges; a close view fades into its left side [px]. */
const EDGE = 6
const FADE = 56

/** Keeps words of half the size `half` between two edges, before all from the first one [px]. */
const within = (at: number, half: number, from: number, to: number): number =>
  Math.max(from + half, Math.min(to - half, at))

/**
 * Moves words that lie on others apart, the shorter way.
 *
 * places, halves - x and y of the middle of each and of its half size [px]
 */
function makeWay(places: Float32Array, halves: Float32Array): void {
  for (let round = 0; round < ROUNDS; round++) {
    for (let a = 0; a < places.length; a += 2) {
      for (let b = a + 2; b < places.length; b += 2) {
        const overX = halves[a]! + halves[b]! + ROOM - Math.abs(places[b]! - places[a]!)
        const overY = halves[a + 1]! + halves[b + 1]! + ROOM - Math.abs(places[b + 1]! - places[a + 1]!)
        if (overX <= 0 || overY <= 0) continue
        const n = overX < overY ? 0 : 1
        const push = (Math.min(overX, overY) / 2) * (places[b + n]! < places[a + n]! ? -1 : 1)
        places[a + n]! -= push
        places[b + n]! += push
      }
    }
  }
}

/** Keeps all words that are not left out inside what nothing covers. */
function keepIn(
  places: Float32Array,
  halves: Float32Array,
  width: number,
  height: number,
  free: FreeArea,
): void {
  const left = free.left > 0 ? free.left + FADE : EDGE
  for (let x = 0; x < places.length; x += 2) {
    if (places[x]! <= OUT_OF_THE_WAY) continue
    places[x] = within(places[x]!, halves[x]!, left, width - free.right - EDGE)
    places[x + 1] = within(places[x + 1]!, halves[x + 1]!, free.top + EDGE, height - free.bottom - EDGE)
  }
}

export function createLabels(canvas: HTMLCanvasElement, labels: readonly Label[]): Labels {
  const layer = document.createElement('div')
  layer.className = 'gear-sign-labels'
  layer.setAttribute('aria-hidden', 'true')
  const tags = labels.map(({ text }) => {
    const tag = document.createElement('span')
    tag.textContent = text
    layer.append(tag)
    return tag
  })
  canvas.parentElement?.append(layer)
  const halves = new Float32Array(2 * labels.length)
  let [measuredAt, measuredFor] = [0, 0]
  /** A projector has larger letters, and another size of picture. */
  const measure = (width: number, height: number) => {
    if (width === measuredAt && height === measuredFor) return
    measuredAt = width
    measuredFor = height
    for (const tag of tags) tag.hidden = false
    for (let n = 0; n < tags.length; n++) {
      halves[2 * n] = tags[n]!.offsetWidth / 2
      halves[2 * n + 1] = tags[n]!.offsetHeight / 2
    }
  }
  const places = new Float32Array(2 * labels.length)
  const written = new Float32Array(2 * labels.length).fill(Number.NaN)
  const [end, start] = [new Vector3(), new Vector3()]
  return {
    place({ camera, width, height, free }, shown, roomy) {
      layer.hidden = !shown
      if (!shown) return
      measure(width, height)
      for (let n = 0; n < tags.length; n++) {
        const left = labels[n]!.minor && !roomy
        tags[n]!.hidden = left
        end.copy(labels[n]!.at).project(camera)
        start.copy(labels[n]!.from).project(camera)
        const dx = (end.x - start.x) * width
        const dy = (start.y - end.y) * height
        const length = Math.hypot(dx, dy) || 1
        places[2 * n] = left
          ? OUT_OF_THE_WAY * (n + 1)
          : ((end.x + 1) / 2) * width + (dx / length) * (AWAY + halves[2 * n]!)
        places[2 * n + 1] = ((1 - end.y) / 2) * height + (dy / length) * (AWAY + halves[2 * n + 1]!)
      }
      keepIn(places, halves, width, height, free)
      makeWay(places, halves)
      keepIn(places, halves, width, height, free)
      for (let n = 0; n < tags.length; n++) {
        const [x, y] = [2 * n, 2 * n + 1]
        const still = Math.abs(places[x]! - written[x]!) < STIR && Math.abs(places[y]! - written[y]!) < STIR
        if (still) continue
        written[x] = places[x]!
        written[y] = places[y]!
        tags[n]!.style.transform = `translate(${places[x]}px, ${places[y]}px) translate(-50%, -50%)`
      }
    },
    dispose: () => layer.remove(),
  }
}
