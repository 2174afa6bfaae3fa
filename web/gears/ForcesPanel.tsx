/** What the teeth do to the worm. */
export function ForcesPanel() {
  return <div className="gear-panel" />
}
