/** Other ways to run it: with pauses, without the fan's air, with the protection acting. */
import { useView, useWorkshop } from '../frame/workshop.ts'
import { keepSign } from '../panel/panels.ts'
import { Switch } from '../panel/Switch.tsx'
import { HeatDuty } from './HeatDuty.tsx'
import type { ThermalMachine } from './heat-machine.ts'
import type { DutyMinutes, HeatWays } from './heat-work.ts'

interface HeatWaysFieldsProps {
  readonly machine: ThermalMachine
  readonly ways: HeatWays
  readonly onWays: (ways: HeatWays) => void
  readonly stillAir: boolean
  readonly onStillAir: (on: boolean) => void
}

const FIRST: DutyMinutes = { on: 5, off: 10 }

export function HeatWaysFields({ machine, ways, onWays, stillAir, onStillAir }: HeatWaysFieldsProps) {
  const { duty, protectionActs } = ways
  const { protection } = machine
  return (
    <div className="heat-ways">
      <Switch label="Also without the fan’s air, dashed" on={stillAir} onChange={onStillAir} />
      {'timeConstant' in protection && (
        <Switch
          label={protection.kind === 'fuse' ? 'The fuse acts' : 'The overload switch acts'}
          on={protectionActs}
          onChange={(on) => onWays({ ...ways, protectionActs: on })}
        />
      )}
      <Switch
        label="Run it with pauses"
        on={duty !== null}
        onChange={(on) => onWays({ ...ways, duty: on ? FIRST : null })}
      />
      {duty && <HeatDuty machine={machine} duty={duty} onDuty={(next) => onWays({ ...ways, duty: next })} />}
      <KeepTones />
    </div>
  )
}

/** With another panel open they show the machine as warm as it runs. */
function KeepTones() {
  const workshop = useWorkshop()
  const kept = useView(({ keptSigns }) => keptSigns.includes('heat'))
  return (
    <Switch
      label="Keep the tones on the stage"
      on={kept}
      onChange={(keep) => keepSign(workshop, 'heat', keep)}
    />
  )
}
