export function PowerPanel() {
  return <h2>Where the power goes</h2>
}
