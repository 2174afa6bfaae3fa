/** The sign of a painted mark: worm one dash, left wheel two dashes, right wheel a dot. Shape carries it, colour helps. */
export type MarkedPart = 'worm' | 'left' | 'right'

const dash = (x: number) => <rect x={x - 2} y="4" width="4" height="20" rx="1" />

export function MarkSign({ part, size = 28 }: { readonly part: MarkedPart; readonly size?: number }) {
  return (
    <svg
      width={size}
      height={size}
      viewBox="0 0 28 28"
      aria-hidden="true"
      focusable="false"
      style={{ flex: 'none', fill: `var(--${part})` }}
    >
      {part === 'worm' && dash(14)}
      {part === 'left' && (
        <>
          {dash(10.2)}
          {dash(17.8)}
        </>
      )}
      {part === 'right' && <circle cx="14" cy="14" r="7.2" />}
    </svg>
  )
}
