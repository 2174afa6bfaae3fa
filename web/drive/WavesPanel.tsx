export function WavesPanel() {
  return <h2>Voltages and currents over time</h2>
}
