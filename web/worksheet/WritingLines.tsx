/** Lines to write on. */
export const WritingLines = ({ lines }: { readonly lines: number }) => (
  <div className="ws-lines">
    {Array.from({ length: lines }, (_, line) => (
      <i key={line} />
    ))}
  </div>
)
