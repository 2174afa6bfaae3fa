/** The row of controls that turn the machine. */
import { Suspense, useState } from 'react'
import { useStore } from 'zustand'
import { useBench, useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { Popover } from '../instrument/Popover.tsx'
import { StepField } from '../instrument/StepField.tsx'
import { DrivePanel, TopicStepper } from '../later.ts'
import {
  type HandStep,
  countTurns,
  handTurn,
  reasonNotToTurn,
  turnOrStop,
  zeroCounts,
} from '../frame/turning.ts'

function TurnButton() {
  const workshop = useWorkshop()
  const motion = useStore(workshop.readout, (now) => now.motion)
  useView((view) => view.apart)
  useBench((bench) => bench.pluggedIn)
  useMachine((machine) => machine)
  const turning = motion === 'running' || motion === 'hand'
  const reason = turning ? null : reasonNotToTurn(workshop)
  return (
    <button
      type="button"
      className="button main turn-button"
      aria-disabled={reason !== null}
      aria-keyshortcuts="Space"
      title={reason ?? undefined}
      onClick={() => turnOrStop(workshop)}
    >
      <Icon name={turning ? 'stop' : 'turn'} />
      {turning ? 'Stop' : 'Turn'}
      <kbd aria-hidden="true">Space</kbd>
    </button>
  )
}

interface HandButtonProps {
  readonly step: HandStep
  readonly way: 1 | -1
  readonly label: string
  readonly hotkey: string
  /** Only the sign is seen; the label is its name. */
  readonly compact?: boolean
}

function HandButton({ step, way, label, hotkey, compact = false }: HandButtonProps) {
  const workshop = useWorkshop()
  return (
    <button
      type="button"
      className={compact ? 'button icon' : 'button hand-button'}
      title={compact ? label : undefined}
      data-step={step}
      aria-keyshortcuts={hotkey}
      onClick={() => handTurn(workshop, step, way)}
    >
      {way < 0 && <Icon name="back" size={16} />}
      <span className={compact ? 'unseen' : undefined}>{label}</span>
      {way > 0 && <Icon name="next" size={16} />}
    </button>
  )
}

function SmallSteps() {
  return (
    <Popover label="Hand turn" side="above">
      <p className="small">The machine need not be plugged in. Or drag the fan or the worm.</p>
      <div className="pairs">
        <HandButton step="degree" way={-1} label="One degree back" hotkey="Shift+5" />
        <HandButton step="degree" way={1} label="One degree" hotkey="5" />
        <HandButton step="tooth" way={-1} label="One tooth back" hotkey="Shift+4" />
        <HandButton step="tooth" way={1} label="One tooth" hotkey="4" />
        <HandButton step="quarter" way={-1} label="A quarter turn back" hotkey="Shift+3" />
        <HandButton step="quarter" way={1} label="A quarter turn" hotkey="3" />
        <HandButton step="wheel" way={-1} label="One wheel turn back" hotkey="Shift+1" />
      </div>
    </Popover>
  )
}

function CountPanel() {
  const workshop = useWorkshop()
  const [count, setCount] = useState(20)
  const take = (value: number) => {
    setCount(value)
    return null
  }
  return (
    <Popover label="Count turns" side="above">
      <StepField
        label="Turns to count"
        value={count}
        min={1}
        max={1000}
        less="One fewer"
        more="One more"
        onChange={take}
      />
      <p className="small">The drive turns it and stops by itself on the mark.</p>
      <div className="pairs">
        <button type="button" className="button" onClick={() => countTurns(workshop, count, 'worm')}>
          Count worm marks
        </button>
        <button type="button" className="button" onClick={() => countTurns(workshop, count, 'wheel')}>
          Count wheel marks
        </button>
      </div>
    </Popover>
  )
}

function SettingField() {
  const { bench } = useWorkshop()
  const setting = useBench((now) => now.setting)
  const steps = useMachine((machine) => machine.control.steps.length)
  const change = (value: number) => {
    bench.setState({ setting: value - 1 })
    return null
  }
  return (
    <StepField
      label="Setting"
      value={setting + 1}
      min={1}
      max={steps}
      less="One step down"
      more="One step up"
      onChange={change}
    />
  )
}

export function Transport() {
  const workshop = useWorkshop()
  const inLesson = useStore(workshop.lesson, ({ lesson }) => lesson !== null)
  return (
    <div className="transport" role="group" aria-label="Turning">
      <div className="transport-main" data-leaves-open>
        <TurnButton />
        <HandButton step="turn" way={-1} label="One worm turn back" hotkey="Shift+2" compact />
        <HandButton step="turn" way={1} label="One worm turn" hotkey="2" />
        <HandButton step="wheel" way={1} label="One wheel turn" hotkey="1" />
      </div>
      <div className="transport-more">
        <SmallSteps />
        <CountPanel />
        <button type="button" className="button" aria-keyshortcuts="0" onClick={() => zeroCounts(workshop)}>
          Zero the counts
        </button>
      </div>
      <div className="transport-drive">
        <SettingField />
        <Popover label="Load and plug" icon="plug" side="above">
          <Suspense>
            <DrivePanel />
          </Suspense>
        </Popover>
      </div>
      <Suspense>{inLesson && <TopicStepper />}</Suspense>
    </div>
  )
}
