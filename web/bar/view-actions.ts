/** What keys and buttons do to the view. */
import type { Workshop } from '../frame/workshop.ts'
import { PACES } from '../store/bench.ts'
import type { CaseState } from '../store/view.ts'
import { VIEWS } from '../scene/views.ts'

type Views = Pick<Workshop, 'view'>

/** Predict is not shown large: there it stays as it is elsewhere. */
export const toggleLarge = ({ view }: Views): void =>
  view.setState(({ large, way }) => (way === 'predict' ? {} : { large: !large }))

export const toggleTheme = ({ view }: Views): void =>
  view.setState(({ theme }) => ({ theme: theme === 'light' ? 'dark' : 'light' }))

const CASES: readonly CaseState[] = ['clear', 'off', 'closed']

export const nextCase = ({ view }: Views): void =>
  view.setState(({ caseState }) => ({ caseState: CASES[(CASES.indexOf(caseState) + 1) % CASES.length]! }))

export const nextView = ({ view }: Views): void =>
  view.setState(({ view: { name, nonce } }) => ({
    view: {
      name: VIEWS[(VIEWS.findIndex(({ view: each }) => each === name) + 1) % VIEWS.length]!.view,
      nonce: nonce + 1,
    },
    camera: null,
  }))

export const toggleApart = ({ view }: Views): void =>
  view.setState(({ apart }) => ({ apart: apart === 0 ? 1 : 0 }))

export const togglePlan = ({ view }: Views): void =>
  view.setState(({ plan }) => ({ plan: plan === 'no' ? 'chosen' : plan === 'chosen' ? 'no' : plan }))

/** One pace faster (-1) or slower (+1). */
export function changePace({ bench }: Pick<Workshop, 'bench'>, by: 1 | -1): void {
  const at = PACES.findIndex((pace) => pace === bench.getState().pace)
  const pace = PACES[at + by]
  if (pace !== undefined) bench.setState({ pace })
}
