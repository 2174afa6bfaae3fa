/** The mark of the program: a worm as a bar, and two rims that go away from the eye on either side of it. */
const half = (
  <>
    <path d="M16.5 39.5A16.6 16.6 0 0 1 11 13.6" fill="none" stroke="currentColor" strokeWidth="5.2" />
    <path d="M18.6 5.2L16 18.2L5.6 9.6Z" fill="currentColor" />
  </>
)

export function Mark({ size = 30 }: { readonly size?: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 48 48" aria-hidden="true" focusable="false">
      <rect x="20.7" y="2.5" width="6.6" height="43" rx="1.6" fill="currentColor" />
      {half}
      <g transform="translate(48 0) scale(-1 1)">{half}</g>
    </svg>
  )
}
