/** One tooth space of a wheel of either form, as the meshes need it: a section in any plane, exact normals. */
import type { GearNumbers } from '../gear/gear-numbers.ts'
import { helicalSection, type HelicalTooth, helicalTooth, writeHelicalNormal } from '../gear/helical-tooth.ts'
import { type Flank, rackSlope, rackTilt } from '../gear/wheel-flank.ts'
import { type SectionDetail, type WheelSection, wheelSection } from '../gear/wheel-section.ts'
import { type SpaceCutter, spaceCutter } from '../gear/wheel-space.ts'

export interface ToothSpace {
  /** [rad] */
  readonly toothPitch: number
  readonly section: (y: number, detail: SectionDetail) => WheelSection
  /**
   * Writes the unit normal, outward from the tooth, at point i of a section on the side sigma; false where
   * there is no formula for it.
   */
  readonly writeNormal: (
    out: Float64Array,
    at: number,
    section: WheelSection,
    sigma: Flank,
    i: number,
  ) => boolean
}

/** Least width of tooth and space of a helical wheel, in modules, in a picture of what cannot be made. */
const LEAST_WIDTH = 0.03

export const toothSpace = (gearing: GearNumbers): ToothSpace =>
  gearing.wheelForm === 'helical' ? helicalSpace(gearing) : throatedSpace(gearing)

function helicalSpace(gearing: GearNumbers): ToothSpace {
  const tooth = helicalTooth(gearing)
  const least = LEAST_WIDTH * gearing.axialModule
  return {
    toothPitch: tooth.toothPitch,
    section: (y, detail) => keptOpen(helicalSection(tooth, y, detail), tooth, detail, least),
    writeNormal: (out, at, { y, radius }, sigma, i) => {
      if (radius[i]! <= tooth.rootRadius) return false
      writeHelicalNormal(out, at, tooth, sigma, radius[i]!, y)
      return true
    },
  }
}

/**
 * Only a wheel that cannot be made needs this: keeps tooth and space at least so wide [mm] that a picture can
 * be drawn.
 */
function keptOpen(
  section: WheelSection,
  tooth: HelicalTooth,
  detail: SectionDetail,
  least: number,
): WheelSection {
  const { y, radius, chi } = section
  const middle = tooth.twist * y
  const side = detail.flank + detail.fillet
  const last = 2 * side + detail.root
  for (let i = 0; i <= side; i++) {
    const half = least / 2 / radius[i]!
    const space = Math.min(tooth.toothPitch / 2 - half, Math.max(half, middle - chi[i]!))
    if (space === middle - chi[i]!) continue
    chi[i] = middle - space
    chi[last - i] = middle + space
  }
  for (let i = 1; i < detail.root; i++) {
    chi[side + i] = chi[side]! + ((chi[side + detail.root]! - chi[side]!) * i) / detail.root
  }
  return section
}

function throatedSpace(gearing: GearNumbers): ToothSpace {
  const cutter = spaceCutter(gearing)
  return {
    toothPitch: cutter.toothPitch,
    section: (y, detail) => wheelSection(cutter, y, detail),
    writeNormal: (out, at, section, sigma, i) => {
      if (Number.isNaN(section.contact[i])) return false
      writeFlankNormal(out, at, cutter, section, sigma, i)
      return true
    },
  }
}

/** Normal of the rack at the point of contact, turned with the wheel: exact. */
function writeFlankNormal(
  out: Float64Array,
  at: number,
  cutter: SpaceCutter,
  section: WheelSection,
  sigma: 1 | -1,
  i: number,
): void {
  const g = cutter.generation
  const t = section.contact[i]!
  const R = section.radius[i]!
  const x = g.centreDistance - R * Math.cos(t)
  const turn = section.chi[i]! - t
  const nx = sigma * rackSlope(g, sigma, x, section.y)
  const ny = sigma * rackTilt(g, sigma, x, section.y)
  const nz = -sigma
  const length = Math.sqrt(nx * nx + ny * ny + 1)
  out[at] = (nx * Math.cos(turn) + nz * Math.sin(turn)) / length
  out[at + 1] = ny / length
  out[at + 2] = (nz * Math.cos(turn) - nx * Math.sin(turn)) / length
}
