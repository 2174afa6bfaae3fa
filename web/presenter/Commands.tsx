/** The stage's commands: through the lesson, and what turns the machine. */
import { useStore } from 'zustand'
import type { Command } from '../channel/message.ts'
import { runsWhileAsked } from '../frame/asking.ts'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { Icon, type IconName } from '../instrument/Icon.tsx'
import { comingWords } from '../lesson/lesson-words.ts'
import { comingNext } from '../lesson/play.ts'
import { askedNow } from '../lesson/progress.ts'
import { useConnected, usePresenter } from './presenter-context.ts'

const NOT_CONNECTED = 'The stage is not connected.'

interface CommandButtonProps {
  readonly command: Command
  readonly label: string
  readonly value?: number
  readonly icon?: IconName
  readonly pressed?: boolean
  readonly hotkey?: string
  /** Why it does nothing now */
  readonly reason?: string | null
}

function CommandButton({
  command,
  label,
  value = 0,
  icon,
  pressed,
  hotkey,
  reason = null,
}: CommandButtonProps) {
  const { end } = usePresenter()
  const why = useConnected() ? reason : NOT_CONNECTED
  return (
    <button
      type="button"
      className="button"
      aria-pressed={pressed}
      aria-disabled={why !== null}
      aria-keyshortcuts={hotkey}
      title={why ?? undefined}
      onClick={() => why === null && end.send(command, value)}
    >
      {icon && <Icon name={icon} size={18} />}
      {label}
    </button>
  )
}

function Through() {
  const mirror = useWorkshop()
  const { end } = usePresenter()
  useStore(mirror.lesson)
  useView((view) => view.lit)
  const connected = useConnected()
  const then = comingNext(mirror)
  return (
    <div className="presenter-through">
      {then.kind === 'count' && <CommandButton command="reveal" label="Reveal now" />}
      <CommandButton command="back" label="Back" icon="back" hotkey="PageUp" />
      <button
        type="button"
        className="button main presenter-go"
        aria-keyshortcuts="PageDown"
        aria-disabled={then.kind === 'end' || !connected}
        onClick={() => end.send('next')}
      >
        {comingWords(then)}
        <Icon name="next" />
      </button>
    </div>
  )
}

function Machine() {
  const mirror = useWorkshop()
  const state = useStore(mirror.lesson)
  const motion = useStore(mirror.readout, (now) => now.motion)
  const turning = motion === 'running' || motion === 'hand'
  const holds = state.step === 'ask' && !runsWhileAsked(state, askedNow(state))
  const held = holds ? 'Held still until it is answered.' : null
  return (
    <div className="presenter-machine">
      <CommandButton
        command="turn"
        label={turning ? 'Stop' : 'Turn'}
        icon={turning ? 'stop' : 'turn'}
        reason={turning ? null : held}
      />
      <CommandButton command="wormTurn" label="One worm turn" reason={held} />
      <CommandButton command="wheelTurn" label="One wheel turn" reason={held} />
      <CommandButton command="zero" label="Zero the counts" reason={held} />
    </div>
  )
}

function Picture() {
  const { blank } = useStore(useWorkshop().lesson)
  const large = useView((view) => view.large)
  return (
    <div className="presenter-picture">
      <CommandButton command="large" label="Large" value={large ? 0 : 1} pressed={large} icon="large" />
      <CommandButton
        command="cover"
        label="Cover the stage"
        pressed={blank}
        hotkey="."
        reason={large ? null : 'In Large only.'}
      />
    </div>
  )
}

export const Commands = () => (
  <section className="presenter-commands" aria-label="Commands for the stage">
    <Machine />
    <Picture />
    <Through />
  </section>
)
