import type { Circuit } from '../../sim/electric/circuit.ts'

/**
 * Half a dozen circuits with magnet motors in small explicit steps, written without modes: in each step the parts that
 * can conduct are asked which of them do. Means are right to about the step; leakage is left out.
 */
export function inSmallSteps(circuit: Circuit, speed: number, perPeriod: number, periods: number) {
  const { source, winding, diodeDrops, capacitance, triac, rectifier } = circuit
  if (winding.kind !== 'permanent-magnet') throw new Error('only motors with magnets')
  const dt = (2 * Math.PI) / source.angularFrequency / perPeriod
  const opposing = winding.emfConstant * speed + winding.brushDrop
  let i = 0
  let v = capacitance > 0 ? source.emf - diodeDrops : 0
  let [mean, square, power, held] = [0, 0, 0, 0]
  for (let n = 0; n < perPeriod * periods; n++) {
    const angle = ((n + 0.5) * 2 * Math.PI) / perPeriod
    const e = source.emf * Math.sin(angle)
    const fires = !triac || angle % Math.PI >= triac.firingAngle
    const given = (rectifier === 'bridge' ? Math.abs(e) : e) - (triac?.drop ?? 0)
    let drawn: number
    if (capacitance > 0) {
      drawn = Math.max(0, (given - diodeDrops - v) / source.resistance)
      const back = winding.emfConstant * speed - winding.brushDrop
      const forward = i > 0 || (i === 0 && v > opposing)
      const backward = i < 0 || (i === 0 && v < back)
      const drive = forward ? v - opposing : backward ? v - back : 0
      const next = i + (dt / winding.inductance) * (drive - winding.resistance * i)
      i = i * next < 0 ? 0 : next
      // The legs of the bridge keep the capacitor from being charged the wrong way.
      v = Math.max(-diodeDrops, v + (dt / capacitance) * (drawn - i - v / circuit.bleedResistance))
    } else {
      // A terminal with legs never falls below them; one without follows the source as long as current flows.
      const behind = fires ? given - source.resistance * i : -Infinity
      const carries = rectifier === 'half-wave' || behind >= 0
      const terminal = (carries ? given - source.resistance * i : 0) - diodeDrops
      const next = i + (dt / winding.inductance) * (terminal - opposing - winding.resistance * i)
      i = Math.max(0, next)
      drawn = carries ? i : fires && i > 0 ? Math.max(0, given / source.resistance) : 0
      if (rectifier === 'bridge' && !carries && !triac && i > 0)
        drawn = Math.max(0, Math.abs(e) / source.resistance)
    }
    if (n < perPeriod * (periods - 1)) continue
    mean += i / perPeriod
    square += i ** 2 / perPeriod
    power += ((rectifier === 'bridge' ? Math.abs(e) : e) * drawn) / perPeriod
    held += v / perPeriod
  }
  return { mean, square, power, held }
}
