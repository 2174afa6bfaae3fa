/** Materials that show how warm a part is: one for each way in which a part's substances share its temperatures. */
import { Color, DoubleSide, type IUniform, ShaderMaterial, Vector2 } from 'three'
import type { PartName } from '../../../sim/pose/parts.ts'
import {
  SUBSTANCE_NAMES,
  type SubstanceName,
  type Theme,
  colourIn,
  substanceOf,
} from '../../material/substances.ts'
import type { PartHeat } from '../../store/part-heat.ts'
import { LOOK_HERE } from '../../material/sign-colours.ts'
import fragment from './heat.frag.glsl?raw'
import { heatLevelOn, heatTone } from '../../material/heat-tone.ts'
import vertex from './heat.vert.glsl?raw'

type Node = 'winding' | 'case' | 'air'
export type HeatKind = 'rotor' | 'motor' | 'brushGear' | 'other'

const ROTOR_WARM: readonly SubstanceName[] = ['laminations', 'enamelledWire', 'copper', 'carbon']
const MOTOR_COOL: readonly SubstanceName[] = ['tray']

/** Which temperature a substance of a part has. Worm and shaft are of the rotor, but no part of what is computed. */
export function heatNode(kind: HeatKind, substance: SubstanceName): Node {
  switch (kind) {
    case 'rotor':
      return ROTOR_WARM.includes(substance) ? 'winding' : 'air'
    case 'motor':
      return MOTOR_COOL.includes(substance) ? 'air' : 'case'
    case 'brushGear':
      return 'case'
    case 'other':
      return 'air'
  }
}

export const heatKind = (part: PartName): HeatKind =>
  part === 'rotor' || part === 'motor' || part === 'brushGear' ? part : 'other'

const KINDS: readonly HeatKind[] = ['rotor', 'motor', 'brushGear', 'other']

export interface HeatPaint {
  readonly materials: Readonly<Record<HeatKind, ShaderMaterial>>
  /** The same with a rim, for the part that is spoken of */
  readonly chosen: Readonly<Record<HeatKind, ShaderMaterial>>
  setHeat(heat: PartHeat, theme: Theme): void
  setStripe(painted: boolean): void
  dispose(): void
}

interface Shared {
  readonly paints: IUniform<Vector2[]>
  readonly stripeColour: IUniform<Color>
  readonly stripe: IUniform<number>
}

const toneless = (): Color[] => SUBSTANCE_NAMES.map(() => new Color())

function material(shared: Shared, tones: Color[], highlight: 0 | 1): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: vertex,
    fragmentShader: fragment,
    uniforms: {
      ...shared,
      tones: { value: tones },
      highlight: { value: highlight },
      highlightColour: { value: new Color(LOOK_HERE) },
    },
    defines: { SUBSTANCES: SUBSTANCE_NAMES.length },
    side: DoubleSide,
  })
}

export function heatPaint(): HeatPaint {
  const shared: Shared = {
    paints: {
      value: SUBSTANCE_NAMES.map(substanceOf).map(
        ({ unlit, striped }) => new Vector2(unlit ? 1 : 0, striped ? 1 : 0),
      ),
    },
    stripeColour: { value: new Color() },
    stripe: { value: 1 },
  }
  const tones = { rotor: toneless(), motor: toneless(), brushGear: toneless(), other: toneless() }
  const made = (highlight: 0 | 1) => ({
    rotor: material(shared, tones.rotor, highlight),
    motor: material(shared, tones.motor, highlight),
    brushGear: material(shared, tones.brushGear, highlight),
    other: material(shared, tones.other, highlight),
  })
  const [materials, chosen] = [made(0), made(1)]
  return {
    materials,
    chosen,
    setHeat(heat, theme) {
      shared.stripeColour.value.set(colourIn('wormPaint', theme))
      for (const kind of KINDS)
        SUBSTANCE_NAMES.forEach((name, index) => {
          const tone = tones[kind][index]!
          if (substanceOf(name).unlit) tone.set(colourIn(name, theme))
          else tone.setScalar(heatTone(heatLevelOn(heat[heatNode(kind, name)], heat.from, heat.to), theme))
        })
    },
    setStripe(painted) {
      shared.stripe.value = painted ? 1 : 0
    },
    dispose() {
      for (const kind of KINDS) {
        materials[kind].dispose()
        chosen[kind].dispose()
      }
    },
  }
}
