/** How hard the brushes spark: two indices on one scale of grades, and which of them decides. */
import { useWidth } from '../chart/use-width.ts'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { Switch } from '../panel/Switch.tsx'
import { figure, givenFigure } from '../instrument/reading-text.ts'
import type { BrushedMachine } from './brushes-state.ts'
import type { BrushNow } from './brushes-now.ts'
import { BrushesScale } from './BrushesScale.tsx'
import { decidesText, gradeText, voltText } from './brushes-words.ts'

interface SparkingProps {
  readonly machine: BrushedMachine
  readonly now: BrushNow
}

export function BrushesSparking({ machine, now: { figures } }: SparkingProps) {
  const { view } = useWorkshop()
  const sparks = useView((state) => state.sparks)
  const [box, width] = useWidth<HTMLDivElement>()
  const { grade, index, densityRatio, densityPerCm2, reactanceVoltage, transformerVoltage } = figures
  const coil = reactanceVoltage + transformerVoltage
  const reference = machine.motor.brushDrop / 2
  return (
    <section aria-label="Sparking">
      <h3 className="brushes-grade">
        Grade {gradeText(grade.grade)} <span className="small">indicative</span>
      </h3>
      <p>{grade.words}.</p>
      <div className="brushes-figure" ref={box}>
        <BrushesScale
          width={width}
          decides={figures.decides}
          rows={[
            {
              name: 'Turning over',
              value: index,
              text: `${voltText(coil)} of ${givenFigure(reference)} V`,
            },
            {
              name: 'Current density',
              value: densityRatio,
              text: `${figure(densityPerCm2)} of ${givenFigure(machine.brushes.densityLimit)} A/cm²`,
            },
          ]}
        />
      </div>
      <p>{decidesText(figures)}</p>
      <p className="small">
        The names of the grades are national practice; where one ends and the next begins is set here and not
        published, and half the drop of the brushes is taken as what they bear.
      </p>
      <Switch label="Sparks on the stage" on={sparks} onChange={(on) => view.setState({ sparks: on })} />
    </section>
  )
}
