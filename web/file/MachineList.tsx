/** The machine on the bench, if it is a person's own, and those that come with the program. */
import type { Machine } from '../../sim/machine/machine.ts'
import { useStore } from 'zustand'
import { useMachine, useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { DEMO_MACHINES } from './demo-machines.ts'
import { isSame } from './difference.ts'

interface RowProps {
  readonly machine: Machine
  readonly sentence: string
}

function Row({ machine: { name, gearing }, sentence }: RowProps) {
  const { wormStarts, wheelTeeth } = gearing
  return (
    <>
      <span className="machine-check">
        <Icon name="check" />
      </span>
      <span className="machine-words">
        <strong>{name}</strong>
        <span className="small">{sentence}</span>
      </span>
      <span className="machine-teeth">
        <span className="number" aria-hidden="true">
          {wormStarts} × {wheelTeeth}
        </span>
        <span className="unseen">
          {wormStarts} {wormStarts === 1 ? 'start' : 'starts'}, {wheelTeeth} teeth
        </span>
      </span>
    </>
  )
}

export function MachineList({ onChoose }: { readonly onChoose: (machine: Machine) => void }) {
  const onStage = useMachine((machine) => machine)
  // a question or a lesson may have lent another one to the stage
  const onBench = useStore(useWorkshop().aside, ({ held }) => held?.document.machine ?? onStage)
  const isOwn = DEMO_MACHINES.every(({ machine }) => !isSame(machine, onBench))
  return (
    <div>
      <p className="small machine-list-head" aria-hidden="true">
        starts × teeth
      </p>
      <ul className="machine-list">
        {isOwn && (
          <li>
            <div className="machine-row" data-chosen="true">
              <Row
                machine={onBench}
                sentence="On the bench now. Undo brings it back after another is chosen."
              />
            </div>
          </li>
        )}
        {DEMO_MACHINES.map(({ id, machine, sentence }) => {
          const chosen = isSame(machine, onBench)
          return (
            <li key={id}>
              <button
                type="button"
                className="machine-row"
                data-chosen={chosen}
                aria-pressed={chosen}
                onClick={() => onChoose(machine)}
              >
                <Row machine={machine} sentence={sentence} />
              </button>
            </li>
          )
        })}
      </ul>
    </div>
  )
}
