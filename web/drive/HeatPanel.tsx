export function HeatPanel() {
  return <h2>Temperature over hours</h2>
}
