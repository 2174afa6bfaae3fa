/** Where the stage looks from, while something is shown that wants to be seen from near. */
import type { View, ViewName } from '../store/view.ts'

/** There, with the parts together, the case open to the eye, and the picture instead of the plan where it can be had. */
export const lookFrom = (state: View, name: ViewName): Partial<View> => ({
  view: { name, nonce: state.view.nonce + 1 },
  camera: null,
  apart: 0,
  caseState: state.caseState === 'closed' ? 'clear' : state.caseState,
  plan: state.plan === 'chosen' ? 'no' : state.plan,
})

/** From one bookmark to another, unless a person has gone elsewhere or looks at something else meanwhile. */
export function lookOn(state: View, from: ViewName, to: ViewName): Partial<View> {
  const { view, camera, apart, plan } = state
  return view.name === from && camera === null && apart === 0 && plan === 'no' ? lookFrom(state, to) : {}
}
