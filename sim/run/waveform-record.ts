import { copyTurns, noTurns, TICKS_PER_TURN, ticksBetween } from '../drive/turns.ts'
import { brushVoltage } from '../electric/steady-network.ts'
import type { WaveNetwork } from '../electric/wave-network.ts'
import { CAPACITOR, MOTOR, smoothed, SPEED } from '../electric/wave-network.ts'
import type { Look } from '../electric/wave-rates.ts'
import { lookAt } from '../electric/wave-rates.ts'
import type { Stepper } from '../numeric/dormand-prince.ts'
import { TIME, writeDense } from '../numeric/dormand-prince.ts'
import type { Witness } from '../numeric/event-run.ts'
import { TURN } from '../quantity/constants.ts'
import type { WaveRun } from './waveform.ts'
import { frameSign } from './waveform.ts'
import { ANGLE, FUSE } from './waveform-state.ts'
import { lookAtLine } from './waveform-system.ts'

/** Columns over model time, equally spaced; voltages and currents of an alternating source with their signs. */
export interface Wave {
  readonly samples: number
  /** Since the start of the wave [s] */
  readonly time: Float64Array
  /** Emf of secondary, socket or battery [V], also while unplugged */
  readonly sourceVoltage: Float64Array
  /** Current through it, through the mains side of a transformer and its core [A] */
  readonly sourceCurrent: Float64Array
  readonly lineCurrent: Float64Array
  /** Behind the rectifier, where a smoothing capacitor stands or would stand [V] */
  readonly busVoltage: Float64Array
  /** Between the brushes [V] */
  readonly motorVoltage: Float64Array
  readonly motorCurrent: Float64Array
  /** On the worm shaft, in the supply's sense [N m] */
  readonly torque: Float64Array
  /** Worm about +z [rad/s], and what it has turned since the start of the wave [rad] */
  readonly speed: Float64Array
  readonly turned: Float64Array
  /** How warm fuse or overload switch is, 1 where it opens */
  readonly fuse: Float64Array
}

function newWave(samples: number): Wave {
  const column = (): Float64Array => new Float64Array(samples)
  return {
    samples,
    time: column(),
    sourceVoltage: column(),
    sourceCurrent: column(),
    lineCurrent: column(),
    busVoltage: column(),
    motorVoltage: column(),
    motorCurrent: column(),
    torque: column(),
    speed: column(),
    turned: column(),
    fuse: column(),
  }
}

/** Fills a wave from the continuous extension of the steps of a run. */
export interface Recorder extends Witness {
  readonly wave: Wave
  /** Samples taken so far */
  taken: number
}

/** Part of a record's length by which its last step may miss its end */
const ROUNDING = 1e-9

/** Records from the present moment of the run, one sample there and the last `duration` later [s]. */
export function newRecorder(run: WaveRun, duration: number, samples: number): Recorder {
  const wave = newWave(samples)
  const start = run.y[TIME]!
  const from = copyTurns(noTurns(), run.turns)
  const y = new Float64Array(run.y.length)
  const recorder: Recorder = {
    wave,
    taken: 0,
    see(stepper: Stepper) {
      const end = stepper.next[TIME]! - start + ROUNDING * duration
      for (; recorder.taken < samples; recorder.taken++) {
        const time = (duration * recorder.taken) / (samples - 1)
        if (time > end) break
        const theta = (start + time - stepper.y[TIME]!) / stepper.span
        writeDense(y, stepper, Math.min(1, Math.max(0, theta)))
        takeSample(wave, recorder.taken, run, y)
        wave.time[recorder.taken] = time
        wave.turned[recorder.taken]! += (TURN * ticksBetween(from, run.turns)) / TICKS_PER_TURN
      }
    },
  }
  return recorder
}

function takeSample(wave: Wave, n: number, run: WaveRun, y: Float64Array): void {
  const { parts, input } = run
  const { network, look } = parts
  lookAt(look, network, y)
  const sign = frameSign(network)
  const alternates = network.circuit.rectifier === 'none' ? sign : 1
  wave.sourceVoltage[n] = sign * look.emf
  wave.sourceCurrent[n] = sign * look.source
  lookAtLine(parts, y)
  wave.lineCurrent[n] = sign * look.line
  wave.motorCurrent[n] = alternates * y[MOTOR]!
  wave.motorVoltage[n] = alternates * brushVoltage(network, look, y[MOTOR]!)
  wave.busVoltage[n] = busVoltage(network, look, y, wave.motorVoltage[n])
  wave.torque[n] = look.torque
  wave.speed[n] = input.sense * y[SPEED]!
  wave.turned[n] = input.sense * y[ANGLE]!
  wave.fuse[n] = y[FUSE]!
}

function busVoltage(network: WaveNetwork, look: Look, y: Float64Array, motor: number): number {
  if (smoothed(network)) return y[CAPACITOR]!
  if (network.alternating) return motor
  return network.connected ? look.emf - network.sourceResistance * look.source : 0
}
