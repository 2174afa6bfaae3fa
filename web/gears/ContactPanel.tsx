/** How the teeth touch. */
export function ContactPanel() {
  return <div className="gear-panel" />
}
