/** The one yellow note of the stage: why it does not turn, or what the picture cannot show. */
import { useStore } from 'zustand'
import { resetProtection } from '../../sim/drive/protection.ts'
import { apparentRate, drawnTruly } from '../../sim/drive/screen-rule.ts'
import { changePace } from '../bar/view-actions.ts'
import { useCovered, useHeld } from '../frame/asking.ts'
import { hold, show } from '../frame/frame.ts'
import { useBench, useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { openPanel } from '../panel/panels.ts'
import { Icon } from '../instrument/Icon.tsx'
import { useClash } from './clash.ts'
import { inputOf } from '../store/bench.ts'
import { WHEELS_OFF } from '../timing/wheels-off.ts'
import { reasonNotToTurn } from '../frame/turning.ts'
import { whyUnsettled } from './unsettled.ts'
import './stage-note.css'

/** Pictures a second of the common screen [Hz] */
const SCREEN = 60

interface Look {
  readonly head: string
  readonly text: string
  readonly action?: { readonly label: string; readonly act: () => void }
}

function useTooFast(): Look | null {
  const workshop = useWorkshop()
  const speed = useStore(workshop.readout, (now) => (now.motion === 'running' ? now.reading.wormSpeed : 0))
  const pace = useBench((bench) => bench.pace)
  const real = speed / (2 * Math.PI)
  const shown = real / pace
  if (drawnTruly(shown, 1, SCREEN)) return null
  const seems = apparentRate(shown, 1, SCREEN)
  const way = seems * shown < 0 ? ' the other way' : ''
  const turns = (rate: number) => Math.abs(rate).toFixed(1)
  return {
    head: 'Marks drawn as arcs.',
    text: `The worm makes ${turns(real)} turns a second${pace > 1 ? `, slowed to ${turns(shown)}` : ''}; this screen would show ${turns(seems)}${way}. Slow it down to count.`,
    action: { label: 'Slower', act: () => changePace(workshop, 1) },
  }
}

function useStalled(): Look | null {
  const workshop = useWorkshop()
  const stands = useStore(
    workshop.readout,
    (now) => now.motion === 'running' && now.reading.wormSpeed === 0 && now.reading.motorTorque !== 0,
  )
  const amperes = useStore(workshop.readout, (now) => now.reading.currentMean.toFixed(1))
  const isLimited = useStore(workshop.readout, (now) => now.reading.isLimited)
  const jammed = useBench((bench) => bench.jammed)
  const motor = useMachine((machine) => machine.motor !== null)
  if (!stands || !motor) return null
  return {
    head: jammed === 'none' ? 'Stalled.' : 'Jammed.',
    text: `The motor stands still and draws ${amperes} A${isLimited ? ', all that its limit lets through' : ''}; a real one would soon be too hot. Switch off before you clear it.`,
    action: {
      label: 'Free it',
      act: () => workshop.bench.setState({ jammed: 'none', leftLoad: 0, rightLoad: 0 }),
    },
  }
}

function useProtectionOpen(): Look | null {
  const workshop = useWorkshop()
  const isOpen = useStore(workshop.readout, ({ reading }) => reading.isOpen)
  const kind = useMachine((machine) => machine.protection.kind)
  if (!isOpen) return null
  const fuse = kind === 'fuse'
  return {
    head: fuse ? 'The fuse has opened.' : 'The overload switch has opened.',
    text: 'It carried more current than it can for longer than it can, and cut the machine off. Clear the cause before you go on.',
    action: {
      label: fuse ? 'New fuse' : 'Close it again',
      act: () => {
        resetProtection(workshop.frame.state)
        workshop.copyReading()
        show(workshop.frame)
      },
    },
  }
}

function useUnsettled(): Look | null {
  const { bench, frame, readout } = useWorkshop()
  const reason = useStore(readout, ({ motion, reading }) =>
    motion === 'running' ? whyUnsettled(frame.drive, inputOf(bench.getState()), reading.wormSpeed) : null,
  )
  return reason === null ? null : { head: 'It finds no steady speed.', text: reason }
}

function useClashing(): Look | null {
  const workshop = useWorkshop()
  const shown = useView(({ panel }) => panel === 'timing')
  if (!useClash()) return null
  return {
    head: 'The outputs clash.',
    text: 'In each turn they strike or come too near. The picture runs through it; a real machine would be damaged.',
    action: shown
      ? { label: 'Stop', act: () => hold(workshop.frame) }
      : { label: 'Timing', act: () => openPanel(workshop, 'timing') },
  }
}

function useNotTurning(): Look | null {
  const workshop = useWorkshop()
  const { view, bench } = workshop
  const apart = useView((state) => state.apart > 0)
  const pluggedIn = useBench((now) => now.pluggedIn)
  const exercise = useView((state) => state.panel === 'timing' && state.apart === WHEELS_OFF)
  useMachine((machine) => machine)
  const text = reasonNotToTurn(workshop)
  // the exercise of the timing panel has taken them apart, and says itself how they come together
  if (!text || exercise) return null
  if (apart)
    return { head: 'Apart.', text, action: { label: 'Together', act: () => view.setState({ apart: 0 }) } }
  if (!pluggedIn && !workshop.frame.drive.notComputed)
    return {
      head: 'No power.',
      text,
      action: { label: 'Plug in', act: () => bench.setState({ pluggedIn: true }) },
    }
  return { head: 'Turn it by hand.', text }
}

/** Says why nothing moves, where a question holds it. */
const HeldStill = ({ alone }: { readonly alone: boolean }) => (
  <p className="held-still">
    <Icon name="stop" size={16} />
    {alone ? 'Held still until you commit' : 'Held still until it is answered'}
  </p>
)

export function StageNote() {
  const held = useHeld()
  const covered = useCovered()
  const led = useStore(useWorkshop().lesson, ({ lesson, mode }) => lesson !== null && mode === 'lead')
  const still = useStore(useWorkshop().readout, ({ motion }) => motion === 'still')
  if (held && still) return <HeldStill alone={!led} />
  return covered ? null : <Note />
}

function Note() {
  const tooFast = useTooFast()
  const stalled = useStalled()
  const notTurning = useNotTurning()
  const clashing = useClashing()
  const open = useProtectionOpen()
  const unsettled = useUnsettled()
  const look = open ?? stalled ?? notTurning ?? unsettled ?? clashing ?? tooFast
  if (!look) return null
  return (
    <div className="note stage-note" role="note">
      <span>
        <Icon name="look" />
      </span>
      <p>
        <b>{look.head}</b> <span className="stage-note-text">{look.text}</span>
      </p>
      {look.action && (
        <button type="button" className="button plain" onClick={look.action.act}>
          {look.action.label}
        </button>
      )}
    </div>
  )
}
