/** What things are made of, listed by substance: colour, metalness, roughness. */
import { INK, WHITE } from './sign-colours.ts'

export type Theme = 'light' | 'dark'

interface Substance {
  readonly colour: string
  /** Colour in the dark theme, where it differs. */
  readonly dark?: string
  readonly metalness: number
  readonly roughness: number
  /** Paint that must match the tape: neither lit nor tone-mapped. */
  readonly unlit?: true
  /** Carries the painted stripe along the thread. */
  readonly striped?: true
}

export const SUBSTANCES = {
  barSteel: { colour: '#aab2b9', metalness: 1, roughness: 0.28 },
  wormSteel: { colour: '#b4bbc1', metalness: 1, roughness: 0.26, striped: true },
  brightSteel: { colour: '#d6dce0', metalness: 1, roughness: 0.14 },
  motorCan: { colour: '#a3abb1', metalness: 1, roughness: 0.42 },
  laminations: { colour: '#5b6167', metalness: 0.85, roughness: 0.5 },
  copper: { colour: '#c9743f', metalness: 1, roughness: 0.34 },
  enamelledWire: { colour: '#b4582e', metalness: 0.55, roughness: 0.32 },
  brass: { colour: '#c39a4c', metalness: 1, roughness: 0.35 },
  carbon: { colour: '#24272a', metalness: 0, roughness: 0.92 },
  ferrite: { colour: '#3b3d40', metalness: 0.1, roughness: 0.8 },
  nylon: { colour: '#d9d3c5', dark: '#d3cdbf', metalness: 0, roughness: 0.46 },
  nylonRecess: { colour: '#c9c3b4', dark: '#b8b2a4', metalness: 0, roughness: 0.6 },
  tray: { colour: '#7e8a95', dark: '#39434c', metalness: 0, roughness: 0.62 },
  plastic: { colour: '#3a424a', dark: '#59646e', metalness: 0, roughness: 0.55 },
  rubber: { colour: '#23282d', metalness: 0, roughness: 0.85 },
  bristle: { colour: '#7d7061', dark: '#74695a', metalness: 0, roughness: 0.9 },
  collar: { colour: '#c3cad0', metalness: 0.55, roughness: 0.5 },
  caseShell: { colour: '#b9c1c8', dark: '#5d6871', metalness: 0, roughness: 0.55 },
  vent: { colour: '#2a3036', metalness: 0, roughness: 0.9 },
  wormPaint: { colour: '#d55e00', metalness: 0, roughness: 0.6, unlit: true },
  leftPaint: { colour: '#0072b2', metalness: 0, roughness: 0.6, unlit: true },
  rightPaint: { colour: '#009e73', metalness: 0, roughness: 0.6, unlit: true },
  ink: { colour: INK, metalness: 0, roughness: 0.6, unlit: true },
  white: { colour: WHITE, metalness: 0, roughness: 0.6, unlit: true },
} as const satisfies Record<string, Substance>

export type SubstanceName = keyof typeof SUBSTANCES

export const SUBSTANCE_NAMES = Object.keys(SUBSTANCES) as readonly SubstanceName[]

export const substanceOf = (name: SubstanceName): Substance => SUBSTANCES[name]

export function colourIn(name: SubstanceName, theme: Theme): string {
  const { colour, dark } = substanceOf(name)
  return theme === 'dark' ? (dark ?? colour) : colour
}

/** Colours of the three marks, as tokens of each theme; arrows and blur arcs use them. */
export const MARK_COLOURS = {
  light: { worm: '#d55e00', left: '#0072b2', right: '#009e73' },
  dark: { worm: '#f0761f', left: '#56b4e9', right: '#10b084' },
} as const
