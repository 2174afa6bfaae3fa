/** Everything in the picture, and the one place where real time enters it. */
import { useFrame } from '@react-three/fiber'
import { Suspense, lazy, useEffect, useLayoutEffect } from 'react'
import type { PartName } from '../../sim/pose/parts.ts'
import type { Theme } from '../material/substances.ts'
import { Floor } from './Floor.tsx'
import { Lights } from './Lights.tsx'
import { MachineParts } from './MachineParts.tsx'
import { Arrows } from './Signs.tsx'
import { LightPath } from './electric/LightPath.tsx'
import { useElectric } from './electric/use-electric.ts'
import { type MachineBodies, disposeBodies } from './machine-bodies.ts'
import { type StageLoop, changeBodies, runStageFrame } from './stage-loop.ts'
import type { CaseState, GearSignProps } from './stage-props.ts'
import type { PowerStop } from '../store/view.ts'

const GearSigns = lazy(async () => ({ default: (await import('./signs/GearSigns.tsx')).GearSigns }))

export interface SceneProps extends GearSignProps {
  readonly loop: StageLoop
  readonly bodies: MachineBodies
  readonly theme: Theme
  readonly caseState: CaseState
  readonly motorCut: boolean
  readonly selected: PartName | null
  readonly lit: PowerStop | null
  readonly pluggedIn: boolean
  readonly setting: number
  readonly shadowMap: number
  /** Told after each frame whether another must follow. */
  readonly onFrame: (again: boolean) => void
  /** Told when what was asked for is in the scene. */
  readonly onCommit: () => void
  /** Asks for a picture. */
  readonly wake: () => void
}

const anySign = ({ gearSigns, sparking, partHeat }: GearSignProps): boolean =>
  sparking > 0 || partHeat !== null || Object.values({ ...gearSigns, heat: false }).some(Boolean)

export function Scene(props: SceneProps) {
  const { loop, bodies, theme, shadowMap, onCommit } = props
  const electric = useElectric(bodies)
  useLayoutEffect(() => {
    changeBodies(loop, bodies)
    onCommit()
  })
  useEffect(() => () => disposeBodies(bodies), [bodies])
  return (
    <>
      <FrameLoop loop={loop} onFrame={props.onFrame} />
      <Lights layout={bodies.layout} theme={theme} shadowMap={shadowMap} />
      <Floor layout={bodies.layout} theme={theme} mapped={shadowMap > 0} />
      <MachineParts
        bodies={bodies}
        electric={electric}
        materials={loop.materials}
        parts={loop.parts}
        theme={theme}
        caseState={props.caseState}
        motorCut={props.motorCut}
        selected={props.selected}
        lit={props.lit}
        pluggedIn={props.pluggedIn}
        setting={props.setting}
      />
      {electric && props.lit && <LightPath electric={electric} stop={props.lit} />}
      {anySign(props) && (
        <Suspense>
          <GearSigns
            loop={loop}
            bodies={bodies}
            theme={theme}
            gearSigns={props.gearSigns}
            misplaced={props.misplaced}
            sense={props.sense}
            support={props.support}
            forceArrows={props.forceArrows}
            sparking={props.sparking}
            partHeat={props.partHeat}
            wake={props.wake}
          />
        </Suspense>
      )}
      <Arrows layout={bodies.layout} theme={theme} parts={loop.parts} />
    </>
  )
}

function FrameLoop({ loop, onFrame }: Pick<SceneProps, 'loop' | 'onFrame'>) {
  useFrame((_, elapsed) => onFrame(runStageFrame(loop, elapsed)), -1)
  return null
}
