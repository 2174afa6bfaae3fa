/** A drawing in its own size on paper. */
import { type Drawing, FONT, innerSvg } from '../models/marks.ts'

export const PaperDrawing = ({ drawing }: { readonly drawing: Drawing }) => (
  <svg
    role="img"
    aria-label={drawing.title}
    width={`${drawing.width}mm`}
    height={`${drawing.height}mm`}
    viewBox={`0 0 ${drawing.width} ${drawing.height}`}
    fontFamily={FONT}
    dangerouslySetInnerHTML={{ __html: innerSvg(drawing) }}
  />
)
