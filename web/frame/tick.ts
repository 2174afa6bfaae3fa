/** A short tick, as of a clock: at a mark that passes, or to hear whether a room hears it. */

/** Pitch, loudness and length: high enough for small loudspeakers, short as a tick. Our choice. */
const PITCH = 1200
const LOUDNESS = 0.4
const SECONDS = 0.06

let context: AudioContext | null = null

/** Browsers play nothing on a page that was not clicked yet. */
const WAIT_FOR_START = 300

const started = (audio: AudioContext): Promise<boolean> =>
  Promise.race([
    audio.resume().then(() => true),
    new Promise<boolean>((settle) => setTimeout(() => settle(false), WAIT_FOR_START)),
  ])

interface Tick {
  /** [Hz] */
  readonly pitch?: number
  /** Where it is heard, from -1, left, to 1, right */
  readonly side?: number
}

export async function playTick({ pitch = PITCH, side = 0 }: Tick = {}): Promise<'played' | 'blocked'> {
  context ??= new AudioContext()
  if (!(await started(context))) return 'blocked'
  const now = context.currentTime
  const tone = context.createOscillator()
  const volume = context.createGain()
  const place = context.createStereoPanner()
  tone.frequency.value = pitch
  place.pan.value = side
  volume.gain.setValueAtTime(LOUDNESS, now)
  volume.gain.exponentialRampToValueAtTime(0.001, now + SECONDS)
  tone.connect(volume).connect(place).connect(context.destination)
  tone.start(now)
  tone.stop(now + SECONDS)
  return 'played'
}
