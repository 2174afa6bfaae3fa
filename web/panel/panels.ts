/** The panels of the right column, and what choosing one does to the stage. */
import type { Workshop } from '../frame/workshop.ts'
import { lookOn } from './stage-look.ts'
import type { GearSigns, PanelName, View, Way } from '../store/view.ts'

interface PanelGroup {
  readonly title: string
  readonly panels: readonly [PanelName, ...PanelName[]]
}

const DRIVE: PanelGroup = {
  title: 'Drive',
  panels: ['figures', 'waves', 'torque', 'power', 'heat', 'brushes'],
}
const GEARS: PanelGroup = { title: 'Gears', panels: ['contact', 'forces', 'timing', 'models'] }
export const PANEL_GROUPS: readonly PanelGroup[] = [DRIVE, GEARS]

export const groupOf = (panel: PanelName): PanelGroup => (GEARS.panels.includes(panel) ? GEARS : DRIVE)

const LABELS: Readonly<Record<Exclude<PanelName, 'figures'>, string>> = {
  waves: 'Waves',
  torque: 'Torque',
  power: 'Power',
  heat: 'Heat',
  brushes: 'Brushes',
  contact: 'Contact',
  forces: 'Forces',
  timing: 'Timing',
  models: 'Models',
}

export const panelLabel = (panel: PanelName, way: Way): string =>
  panel !== 'figures' ? LABELS[panel] : way === 'design' ? 'What follows' : 'Readings'

/** Signs that come and go with the panel of the same name. */
const FOLLOWING = ['contact', 'forces', 'timing', 'heat'] as const
export type FollowingSign = (typeof FOLLOWING)[number]

/** The signs with `panel` open: those of that panel, and those that were kept. */
export function signsWith(
  panel: View['panel'],
  signs: GearSigns,
  kept: readonly (keyof GearSigns)[],
): GearSigns {
  const shown = (sign: FollowingSign) => panel === sign || kept.includes(sign)
  return {
    ...signs,
    contact: shown('contact'),
    forces: shown('forces'),
    timing: shown('timing'),
    heat: shown('heat'),
  }
}

/** Forces are read from near the worm; the stage goes back once they are left. */
function looking(state: View, panel: View['panel']): Partial<View> {
  if (panel === state.panel) return {}
  if (panel === 'forces') return lookOn(state, 'gears', 'worm')
  return state.panel === 'forces' ? lookOn(state, 'worm', 'gears') : {}
}

export const openPanel = ({ view }: Pick<Workshop, 'view'>, panel: View['panel']): void =>
  view.setState((state) => ({
    panel,
    gearSigns: signsWith(panel, state.gearSigns, state.keptSigns),
    lit: panel === 'power' ? state.lit : null,
    ...looking(state, panel),
  }))

/** Keeps a sign on the stage when its panel is left, or lets it go with the panel again. */
export const keepSign = ({ view }: Pick<Workshop, 'view'>, sign: FollowingSign, keep: boolean): void =>
  view.setState(({ panel, gearSigns, keptSigns }) => {
    const kept = keptSigns.filter((each) => each !== sign)
    if (keep) kept.push(sign)
    return { keptSigns: kept, gearSigns: signsWith(panel, gearSigns, kept) }
  })
