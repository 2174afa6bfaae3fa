/** Lines at 45 degrees for what is not allowed; fill with url(#id). */
export const Hatch = ({ id, size = 6 }: { readonly id: string; readonly size?: number }) => (
  <pattern id={id} width={size} height={size} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
    <rect className="timing-hatch-ground" width={size} height={size} />
    <path className="timing-hatch-line" d={`M0 0V${size}`} strokeWidth={size / 3} />
  </pattern>
)
