/** Signs of the comparison: the flag of a prediction, the strokes of an own count. */
const line = { fill: 'none', stroke: 'currentColor', strokeWidth: 2 }

export const FlagSign = () => (
  <svg width="24" height="24" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
    <path {...line} d="M5 22V4h14l-4 5 4 5H5" />
  </svg>
)

export const TallySign = () => (
  <svg width="24" height="24" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
    <path {...line} d="M5 4v16M9.5 4v16M14 4v16M18.5 4v16M2 17L22 7" />
  </svg>
)
