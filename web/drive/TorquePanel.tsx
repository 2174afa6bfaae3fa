export function TorquePanel() {
  return <h2>Torque, speed and where they meet</h2>
}
