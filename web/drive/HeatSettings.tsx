/** Where each setting of the machine ends up, with the loads as set. */
import { useBench } from '../frame/workshop.ts'
import { RunProgress } from '../run-work/RunProgress.tsx'
import type { ThermalMachine } from './heat-machine.ts'
import { degreeText } from '../instrument/reading-text.ts'
import { slowerIsHotter } from './heat-words.ts'
import type { AllSettled } from './heat-work.ts'

interface HeatSettingsProps {
  readonly machine: ThermalMachine
  readonly all: AllSettled
}

export function HeatSettings({ machine, all: { settled, control } }: HeatSettingsProps) {
  const setting = useBench((bench) => bench.setting)
  const steps = machine.control.steps.length
  if (steps < 2) return null
  const hotter = settled && slowerIsHotter(settled)
  return (
    <section aria-label="Where each setting ends">
      <h3>Where each setting ends</h3>
      <RunProgress what="Settled temperatures" control={control} />
      {settled && (
        <table className="drive-table heat-settings">
          <thead>
            <tr>
              <th scope="col">Setting</th>
              <th scope="col">Winding</th>
              <th scope="col">Case</th>
            </tr>
          </thead>
          <tbody>
            {settled.map((each, i) => (
              <tr key={i} aria-current={i === setting ? 'true' : undefined}>
                <th scope="row">
                  {i + 1}
                  {i === setting && ', as set'}
                </th>
                {'reason' in each ? (
                  <td colSpan={2}>no settling</td>
                ) : (
                  <>
                    <td className="number">{degreeText(each.winding)}</td>
                    <td className="number">{degreeText(each.case)}</td>
                  </>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {hotter && <p>{hotter}</p>}
    </section>
  )
}
