/** Where the stage looks from, while something is shown that wants to be seen from near. */
import type { View, ViewName } from '../store/view.ts'

/** There at once or on the way; a closed case would hide it. */
export const lookFrom = ({ view, caseState }: View, name: ViewName) => ({
  view: { name, nonce: view.nonce + 1 },
  camera: null,
  caseState: caseState === 'closed' ? ('clear' as const) : caseState,
})

/** From one bookmark to another, unless a person has gone elsewhere meanwhile. */
export const lookOn = (state: View, from: ViewName, to: ViewName): Partial<View> =>
  state.view.name === from && state.camera === null ? lookFrom(state, to) : {}
