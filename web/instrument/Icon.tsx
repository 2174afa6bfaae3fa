/** Line signs in a box of 20; they say nothing to a screen reader, the control's name does. */
import type { ReactNode } from 'react'

const thin = { fill: 'none', stroke: 'currentColor', strokeWidth: 1.8 }
const line = { fill: 'none', stroke: 'currentColor', strokeWidth: 2 }
const bold = { fill: 'none', stroke: 'currentColor', strokeWidth: 2.4 }

const drawings = {
  turn: <path d="M5 3l12 7-12 7z" fill="currentColor" />,
  stop: <path d="M4 3h4v14H4zM12 3h4v14h-4z" fill="currentColor" />,
  large: <path {...line} d="M2 7V2h5M18 13v5h-5M2 2l6 6M18 18l-6-6" />,
  wide: <path {...line} d="M8 4L2 10l6 6M2 10h16" />,
  narrow: <path {...line} d="M12 4l6 6-6 6M18 10H2" />,
  theme: (
    <>
      <circle {...line} cx="10" cy="10" r="7" />
      <path d="M10 3v14a7 7 0 0 0 0-14z" fill="currentColor" />
    </>
  ),
  help: (
    <>
      <path {...line} d="M6.5 7a3.5 3.5 0 1 1 5 3.2c-1 .5-1.5 1.1-1.5 2.3" />
      <circle cx="10" cy="16" r="1.2" fill="currentColor" />
    </>
  ),
  slow: <path {...line} d="M3 15a8 8 0 1 1 14 0M10 11L5.5 7.5" />,
  clockwise: <path {...bold} d="M4 13a6.6 6.6 0 1 1 12 0M19.2 10.6L15.6 14.4L12.4 10.3" />,
  anticlockwise: <path {...bold} d="M16 13a6.6 6.6 0 1 0-12 0M.8 10.6L4.4 14.4L7.6 10.3" />,
  back: <path {...bold} d="M12 4l-6 6 6 6" />,
  next: <path {...bold} d="M8 4l6 6-6 6" />,
  down: <path {...bold} d="M4 7l6 6 6-6" />,
  check: <path {...bold} d="M3 10.5l4.5 4.5L17 5" />,
  ring: <circle {...bold} cx="10" cy="10" r="6" />,
  close: <path {...bold} d="M4 4l12 12M16 4L4 16" />,
  plus: <path {...bold} d="M10 3v14M3 10h14" />,
  minus: <path {...bold} d="M3 10h14" />,
  undo: <path {...line} d="M3 8h9a5 5 0 0 1 0 10H7M7 4L3 8l4 4" />,
  redo: <path {...line} d="M17 8H8a5 5 0 0 0 0 10h5M13 4l4 4-4 4" />,
  views: <path {...thin} d="M10 2l7 4v8l-7 4-7-4V6zM3 6l7 4 7-4M10 10v8" />,
  case: (
    <>
      <rect {...thin} x="2" y="4" width="16" height="12" rx="3" strokeDasharray="3 2" />
      <circle cx="10" cy="10" r="3" fill="currentColor" />
    </>
  ),
  apart: (
    <>
      <path {...thin} d="M2 10h4M14 10h4M4 7.5L1.5 10 4 12.5M16 7.5L18.5 10 16 12.5" />
      <rect {...thin} x="8" y="4" width="4" height="12" />
    </>
  ),
  readings: <path {...thin} d="M3 4h14M3 10h14M3 16h9" />,
  part: (
    <path
      {...thin}
      d="M10 2l2 3 3.5-.5.5 3.5 3 2-3 2-.5 3.5L12 15l-2 3-2-3-3.5.5L4 12l-3-2 3-2 .5-3.5L8 5zM10 8v4M8 10h4"
    />
  ),
  flag: <path {...line} d="M5 18V3h11l-3 3.5L16 10H5" />,
  tally: <path {...line} d="M4 4v12M8 4v12M12 4v12M16 4v12M2 14L18 6" />,
  plug: <path {...line} d="M7 2v5M13 2v5M4 7h12v3a6 6 0 0 1-12 0zM10 16v3" />,
  file: <path {...thin} d="M4 2h8l4 4v12H4zM12 2v4h4" />,
  link: <path {...line} d="M8 12l4-4M6 9l-2 2a3.5 3.5 0 0 0 5 5l2-2M14 11l2-2a3.5 3.5 0 0 0-5-5L9 6" />,
  look: (
    <>
      <path d="M10 2l9 16H1z" fill="currentColor" />
      <path d="M10 8v5" stroke="var(--look)" strokeWidth="2" />
      <circle cx="10" cy="15.4" r="1.1" fill="var(--look)" />
    </>
  ),
} satisfies Record<string, ReactNode>

export type IconName = keyof typeof drawings

export function Icon({ name, size = 20 }: { readonly name: IconName; readonly size?: number }) {
  return (
    <svg
      width={size}
      height={size}
      viewBox="0 0 20 20"
      aria-hidden="true"
      focusable="false"
      style={{ flex: 'none' }}
    >
      {drawings[name]}
    </svg>
  )
}
