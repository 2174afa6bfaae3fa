import type { QrPicture } from './qr.ts'

interface QrCodeProps {
  readonly picture: QrPicture
  readonly label: string
}

export function QrCode({ picture: { size, path }, label }: QrCodeProps) {
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
