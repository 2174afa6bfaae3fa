export function BrushesPanel() {
  return <h2>Brushes and commutator</h2>
}
