import { useMemo } from 'react'
import { qrPicture } from './qr.ts'

export function QrCode({ text, label }: { readonly text: string; readonly label: string }) {
  const picture = useMemo(() => qrPicture(text), [text])
  if (!picture) return null
  const { size, path } = picture
  return (
    <svg
      className="ws-qr"
      role="img"
      aria-label={label}
      viewBox={`0 0 ${size} ${size}`}
      shapeRendering="crispEdges"
    >
      <path d={path} fill="#000" />
    </svg>
  )
}
