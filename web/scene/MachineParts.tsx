/** One group a part, moved by the loop; each holds the part's solid, its marks and what it carries. */
import type { ReactNode } from 'react'
import { useEffect, useMemo } from 'react'
import type { InstancedMesh, MeshStandardMaterial } from 'three'
import { PART_NAMES, type PartName } from '../../sim/pose/parts.ts'
import type { SubstanceMaterials } from '../material/materials.ts'
import type { Theme } from '../material/substances.ts'
import { Case } from './Case.tsx'
import { BlurArc, ToothVeil } from './Signs.tsx'
import { hasBlades, sweepers } from './body/brush.ts'
import type { ElectricBodies } from './electric/electric-bodies.ts'
import type { MachineBodies } from './machine-bodies.ts'
import { type MovingParts, TURNER_OF } from './moving-parts.ts'
import type { CaseState } from './stage-props.ts'
import { litParts } from './lit.ts'
import type { PowerStop } from '../store/view.ts'

export interface MachinePartsProps {
  readonly bodies: MachineBodies
  /** Null until they are fetched */
  readonly electric: ElectricBodies | null
  readonly materials: SubstanceMaterials
  readonly parts: MovingParts
  readonly theme: Theme
  readonly caseState: CaseState
  readonly motorCut: boolean
  readonly selected: PartName | null
  readonly lit: PowerStop | null
  readonly pluggedIn: boolean
  /** Step of the speed control, from 0 */
  readonly setting: number
}

const materialFor = (
  part: PartName,
  { materials, lit, selected }: Pick<MachinePartsProps, 'materials' | 'lit' | 'selected'>,
): MeshStandardMaterial =>
  litParts(lit).includes(part) ? materials.lit : part === selected ? materials.selected : materials.plain

export function MachineParts(props: MachinePartsProps) {
  return PART_NAMES.map((part, index) => (
    <group key={part} ref={(group) => void (props.parts.groups[index] = group)}>
      <Part {...props} part={part} />
    </group>
  ))
}

function Part({ part, ...props }: MachinePartsProps & { readonly part: PartName }): ReactNode {
  const { bodies, electric, materials, parts, theme, selected, motorCut } = props
  const plain = bodies.solids.get(part) ?? electric?.solids.get(part)
  const solid = part === 'motor' && !motorCut ? bodies.wholeMotor : plain
  if (solid === undefined || solid === null) return null
  const material = materialFor(part, props)
  if (part === 'case') {
    const isSelected = part === selected
    return (
      <Case
        bodies={bodies}
        materials={materials}
        theme={theme}
        state={props.caseState}
        selected={isSelected}
      />
    )
  }
  const turner = TURNER_OF[part]
  const mark = bodies.marks.get(part)
  return (
    <>
      <mesh
        ref={(mesh) => {
          if (part === 'fan') parts.fan = mesh
          if (part === 'frontBearing') parts.frontBearing = mesh
        }}
        geometry={solid}
        material={material}
        castShadow
        receiveShadow
      />
      {part === 'frontBearing' && (
        <mesh geometry={bodies.wormPointer} material={materials.plain} castShadow />
      )}
      {part === 'setting' && <Knob {...props} material={material} />}
      {part === 'plug' && <Socket {...props} material={material} />}
      {part === 'tray' && <WheelPointers {...props} />}
      {mark !== undefined && turner !== undefined && (
        <mesh ref={(mesh) => void (parts.marks[turner] = mesh)} geometry={mark} material={materials.plain} />
      )}
      {turner !== undefined && <BlurArc turner={turner} layout={bodies.layout} theme={theme} parts={parts} />}
      {(turner === 'left' || turner === 'right') && (
        <ToothVeil turner={turner} layout={bodies.layout} theme={theme} parts={parts} />
      )}
      {part === 'rotor' && (
        <mesh
          ref={(mesh) => void (parts.veils.worm = mesh)}
          geometry={bodies.rotorVeil}
          material={material}
          visible={false}
        />
      )}
      {part === 'fan' && <FanBlur bodies={bodies} parts={parts} />}
      {(part === 'leftBrush' || part === 'rightBrush') && <Sweepers {...props} part={part} />}
    </>
  )
}

interface ElectricPieceProps extends MachinePartsProps {
  readonly material: MeshStandardMaterial
}

/** Turned to the step that is set. */
function Knob({ electric, material, setting }: ElectricPieceProps) {
  const knob = electric?.knob
  if (!knob) return null
  return (
    <mesh
      geometry={knob.geometry}
      material={material}
      position={knob.at}
      rotation={[0, knob.angles[setting] ?? 0, 0]}
      castShadow
    />
  )
}

/** Away from the plug while the machine is unplugged. */
function Socket({ electric, material, pluggedIn }: ElectricPieceProps) {
  if (!electric?.socket) return null
  return (
    <mesh
      geometry={electric.socket}
      material={material}
      position={[0, 0, pluggedIn ? 0 : electric.unplugged]}
      castShadow
      receiveShadow
    />
  )
}

function Sweepers({ part, ...props }: MachinePartsProps & { readonly part: PartName }) {
  const { bodies, materials } = props
  const wanted = materialFor(part, props)
  const plain =
    bodies.detail === 'low' && !hasBlades(bodies.layout) ? materials.plainBristle : materials.plain
  const mesh = useMemo((): InstancedMesh => {
    const { leftFirstRow, rightFirstRow } = bodies.layout.output
    const firstRow = part === 'rightBrush' ? rightFirstRow : leftFirstRow
    const made = sweepers(bodies.layout, firstRow, plain, bodies.detail)
    made.castShadow = made.receiveShadow = true
    return made
  }, [bodies, plain, part])
  useEffect(() => {
    mesh.material = wanted === materials.plain ? plain : wanted
  }, [mesh, materials, plain, wanted])
  useEffect(
    () => () => {
      mesh.geometry.dispose()
      mesh.dispose()
    },
    [mesh],
  )
  return <primitive object={mesh} />
}

/** A grey disc in place of blades that are too fast to be told apart. */
function FanBlur({ bodies, parts }: Pick<MachinePartsProps, 'bodies' | 'parts'>) {
  const { fan } = bodies.layout
  if (fan === null) return null
  return (
    <mesh
      ref={(mesh) => void (parts.fanBlur = mesh)}
      position={[0, 0, fan.z]}
      visible={false}
      renderOrder={1}
    >
      <cylinderGeometry args={[fan.radius, fan.radius, 0.5 * fan.depth, 48]} />
      <meshBasicMaterial color="#3a424a" transparent opacity={0.5} depthWrite={false} />
    </mesh>
  )
}

function WheelPointers({
  bodies,
  materials,
  parts,
}: Pick<MachinePartsProps, 'bodies' | 'materials' | 'parts'>) {
  const { gears, pointers } = bodies.layout
  return (['left', 'right'] as const).map((side) => (
    <mesh
      key={side}
      ref={(mesh) => void (parts.pointers[side] = mesh)}
      geometry={bodies.wheelPointer}
      material={materials.plain}
      position={[(side === 'left' ? -1 : 1) * gears.centreDistance, pointers.wheelY, pointers.wheelZ]}
      castShadow
    />
  ))
}
