/** Camera bookmarks: from where each view looks, and what it must hold in the frame. */
import type { GearNumbers, Side } from '../../sim/gear/gear-numbers.ts'
import { handSign } from '../../sim/gear/wheel-motion.ts'
import type { PowerStop, Support, ViewName } from '../store/view.ts'

export interface ViewBookmark {
  readonly view: ViewName
  readonly name: string
  /** To the right, from straight in front [deg] */
  readonly yaw: number
  /** Above the level [deg] */
  readonly elevation: number
  /** What is kept in the frame. */
  readonly subject:
    | 'machine'
    | 'gears'
    | 'worm'
    | 'forces'
    | 'mesh'
    | 'flanks'
    | 'motor'
    | 'commutator'
    | 'brushes'
    | 'apart'
    | 'lit'
}

export const VIEWS: readonly ViewBookmark[] = [
  { view: 'gears', name: 'Gears', yaw: 27, elevation: 35, subject: 'machine' },
  { view: 'top', name: 'Top', yaw: 0, elevation: 89, subject: 'gears' },
  { view: 'worm', name: 'Worm', yaw: 26, elevation: 50, subject: 'worm' },
  { view: 'mesh', name: 'Mesh', yaw: 4, elevation: 58, subject: 'mesh' },
  { view: 'motor', name: 'Motor', yaw: 38, elevation: 32, subject: 'motor' },
  { view: 'commutator', name: 'Commutator', yaw: 30, elevation: 40, subject: 'commutator' },
  { view: 'brushes', name: 'Brushes', yaw: 22, elevation: -2, subject: 'brushes' },
  { view: 'whole', name: 'Whole', yaw: 34, elevation: 30, subject: 'apart' },
]

/** Views that fill the canvas, so that words over it stand on the picture. */
export const fillsCanvas = (view: ViewName): boolean =>
  view === 'worm' || view === 'mesh' || view === 'commutator'

/** What a close view has to show. */
export interface Look {
  /** The mesh that is looked into */
  readonly side: Side
  /** Sense along z in which the threads push the teeth whose driving flanks are to be seen; 0: the mesh itself */
  readonly flanks: 1 | -1 | 0
  /** Where the bearings are whose forces are to be seen; null without forces */
  readonly forces: Support | null
  /** Where the light on the power's way stands; null while it is out */
  readonly lit: PowerStop | null
}

export const NOTHING_SPECIAL: Look = { side: 'right', flanks: 0, forces: null, lit: null }

/** +1 for the right mesh, -1 for the left one, which is the same after half a turn about the worm. */
export const sideSign = (side: Side): 1 | -1 => (side === 'left' ? -1 : 1)

/** Sense along z in which the threads of a worm go that turns about +z as `sense` says. */
export const pushesAlong = (sense: 1 | -1, hand: GearNumbers['hand']): 1 | -1 =>
  sense * handSign(hand) > 0 ? -1 : 1

/** Around the wheel, from straight in front, where the teeth are that show their driving flanks [deg] */
export const FLANKS_AT = 35
/** From where these are seen best: half way between their faces and their flanks [deg] */
const FLANKS_YAW = 12
const FLANKS_ELEVATION = 20
const FORCES = { yaw: 28, elevation: 50, subject: 'forces' } as const

/** From where each stop is seen; from above unless it is told. */
const LIT_FROM: Partial<Record<PowerStop, readonly [yaw: number, elevation: number]>> = {
  socket: [40, 28],
  transformer: [-14, 38],
  rectifier: [62, 34],
  capacitor: [62, 34],
  setting: [68, 34],
  wheels: [20, 46],
  outputs: [22, 2],
  fan: [64, 24],
}
const LIT_USUALLY = [30, 40] as const

function litBookmark(view: ViewName, stop: PowerStop): ViewBookmark {
  const [yaw, elevation] = LIT_FROM[stop] ?? LIT_USUALLY
  return { view, name: '', yaw, elevation, subject: 'lit' }
}

/** The bookmark of this name, as it suits what is looked for. */
export function bookmarkOf(name: ViewName, { side, flanks, forces, lit }: Look): ViewBookmark | undefined {
  if (lit !== null) return litBookmark(name, lit)
  const bookmark = VIEWS.find(({ view }) => view === name)
  if (bookmark === undefined) return undefined
  if (name === 'worm' && forces !== null) return { ...bookmark, ...FORCES }
  if (name !== 'mesh') return bookmark
  const own = sideSign(side)
  if (flanks === 0) return { ...bookmark, yaw: own * bookmark.yaw }
  return { ...bookmark, yaw: -own * flanks * FLANKS_YAW, elevation: FLANKS_ELEVATION, subject: 'flanks' }
}
