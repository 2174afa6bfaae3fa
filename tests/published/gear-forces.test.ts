/**
 * Printed figures of the gear trade: forces, speeds and efficiency. Tolerances: half of the last printed
 * digit, or as said.
 */
import { test } from 'vitest'
import { wormDrivingEfficiency } from '../../sim/gear/efficiency.ts'
import {
  axialShare,
  meshComponents,
  meshForces,
  slidingSpeed,
  tangentialShare,
} from '../../sim/gear/mesh-forces.ts'
import { leadAngle } from '../../sim/gear/proportions.ts'
import { degrees, radians } from '../../sim/quantity/convert.ts'
import { near } from '../support/near.ts'
import { JINDAL, KHURMI, MOTT, SHIGLEY, WENTZELL } from './gear-sources.ts'

const alphaN = radians(14.5)
const g = leadAngle(2, 12)

/** Components of a mesh with a driving worm that has the tangential force Wt at its reference circle. */
const meshOf = (Wt: number) =>
  meshComponents(Wt / tangentialShare(alphaN, g, 0.03, 'worm'), alphaN, g, 0.03, 'worm')

test(`speeds of the 2/30 worm: ${SHIGLEY}, Example 13-10, from memory`, () => {
  near(degrees(g), 9.46, 0.005)
  const v1 = (Math.PI * 2 * 1200) / 12
  near(v1, 628, 0.5)
  near((1200 * 2) / 30, 80, 0.5)
  near(slidingSpeed(v1, g), 637, 0.5)
  near(v1 * Math.tan(g), 105, 0.5)
})

test(`sliding speed: ${JINDAL}, Example 28-4, formula in ${MOTT}, Eq. 10-18`, () => {
  near(slidingSpeed(2.0944, radians(14.036)), 2.159, 0.001)
})

test(`forces of the 2/30 worm at 1 hp: ${SHIGLEY}, Example 13-10, from memory`, () => {
  // The book rounds the normal force to 278 before it goes on.
  const tangential = 33000 / ((Math.PI * 2 * 1200) / 12)
  near(tangential, 52.5, 0.05)
  const { normal, radial, axial } = meshOf(tangential)
  near(normal, 278, 0.5)
  near(radial, 69.6, 0.1)
  near(axial, 264, 0.5)
  near(axial * 2.5, 660, 1.5)
})

test(`the same in SI: ${SHIGLEY}, Example 13-10, converted, derived`, () => {
  const mesh = meshOf(745.699872 / (0.0254 * 40 * Math.PI))
  near(mesh.normal, 1237.7, 0.05)
  near(mesh.radial, 309.9, 0.05)
  near(mesh.axial, 1175.9, 0.05)
  near(mesh.axial * 0.0635, 74.67, 0.005)
  near(wormDrivingEfficiency(g, alphaN, 0.03), 0.8389, 5e-5)
})

test.each([
  { lambda: 1, alpha: 14.5, percent: 25.2 },
  { lambda: 5, alpha: 14.5, percent: 62.6 },
  { lambda: 10, alpha: 14.5, percent: 76.6 },
  { lambda: 15, alpha: 14.5, percent: 82.7 },
  { lambda: 20, alpha: 20, percent: 85.6 },
])(`efficiency is $percent % at $lambda deg: ${SHIGLEY}, Table 13-6, from memory`, (row) => {
  const [gamma, alpha] = [radians(row.lambda), radians(row.alpha)]
  near(100 * wormDrivingEfficiency(gamma, alpha, 0.05), row.percent, 0.05)
  const shares = axialShare(alpha, gamma, 0.05, 'worm') / tangentialShare(alpha, gamma, 0.05, 'worm')
  near(100 * shares * Math.tan(gamma), row.percent, 0.05)
})

test(`friction power and efficiency of the 3/52 set: ${MOTT}, Example Problem 10-10, p. 481, from memory`, () => {
  // 4168 lbf in on the wheel of 8.667 in at 101 r/min, friction 0.022, also from memory
  const [gamma, alpha, mu] = [radians(14.04), radians(19.45), 0.022]
  const Wt = 4168 / (8.667 / 2)
  const { normal } = meshComponents(Wt / axialShare(alpha, gamma, mu, 'worm'), alpha, gamma, mu, 'worm')
  const lost = (mu * normal * slidingSpeed((Math.PI * 2 * 1750) / 12, gamma)) / 33000
  near(lost, 0.666, 0.002)
  const efficiency = wormDrivingEfficiency(gamma, alpha, mu)
  near((4168 * 101) / 63000 / efficiency, 7.35, 0.01)
  near(100 * efficiency, 90.9, 0.1)
})

test(`axial force at 6 kW: ${JINDAL}, Example 28-3, p. 727`, () => {
  const gamma = leadAngle(2, 10)
  const Pt = 6000 / ((Math.PI * 0.05 * 1440) / 60)
  const share =
    axialShare(radians(20), gamma, 0.08, 'worm') / tangentialShare(radians(20), gamma, 0.08, 'worm')
  near(Pt * share, 5487, 0.5)
  near((Pt * wormDrivingEfficiency(gamma, radians(20), 0.08)) / Math.tan(gamma), 5487, 0.5)
})

test(`power out and lost at 1.2 kW: ${JINDAL}, Example 28-4, p. 728`, () => {
  const eta = wormDrivingEfficiency(leadAngle(2, 8), radians(20), 0.032)
  near(1.2 * eta, 1.047, 0.0005)
  near(1.2 * (1 - eta), 0.153, 0.0005)
})

test(`efficiency with the pressure angle left out: ${WENTZELL}, Example 13.6, p. 294`, () => {
  const efficiency = wormDrivingEfficiency(radians(4.77), 0, 0.03)
  near(efficiency, 0.73, 0.005)
  // 5 hp at 1750 r/min on 60 to 1; the book goes on with the rounded 0.73 and 63 000 lbf in r/min a hp
  const torque = (63_000 * 5) / 1750
  near(torque, 180, 0.005)
  near(torque * 60 * Number(efficiency.toFixed(2)), 7884, 0.5)
})

test(`speeds, efficiency and loads of the 1/24 set: ${SHIGLEY}, Example 15-3, from memory`, () => {
  const gamma = leadAngle(1, 12)
  const v1 = (Math.PI * 3 * 1800) / 12
  const f = 0.0178
  near(degrees(gamma), 4.764, 0.0005)
  near(slidingSpeed(v1, gamma), 1419, 0.5)
  near(v1 * Math.tan(gamma), 117.8, 0.05)
  const e = wormDrivingEfficiency(gamma, alphaN, f)
  near(e, 0.818, 0.0005)
  const WG = (33000 * 3 * 1.25) / (v1 * Math.tan(gamma) * e)
  near(WG, 1284, 0.5)
  const WW = (WG * tangentialShare(alphaN, gamma, f, 'worm')) / axialShare(alphaN, gamma, f, 'worm')
  near(WW, 131, 0.5)
})

test(`a screw of 5 deg that just locks has the efficiency 0.49617: ${KHURMI}, from memory`, () => {
  near(wormDrivingEfficiency(radians(5), 0, Math.tan(radians(5))), 0.49617, 5e-6)
})

test('second wheel on the 2/30 worm doubles torque and thrust and takes the side loads away: statics, derived', () => {
  const Wt = 33000 / ((Math.PI * 2 * 1200) / 12)
  const torque = (2.5 * Wt * axialShare(alphaN, g, 0.03, 'worm')) / tangentialShare(alphaN, g, 0.03, 'worm')
  const forces = meshForces({
    r1: 1,
    r2: 2.5,
    alphaN,
    g,
    mu: 0.03,
    hand: 1,
    wormSense: 1,
    rightTorque: torque,
    leftTorque: torque,
  })
  near(-forces.wormMoment[2], 105.0, 0.1)
  near(forces.wormForce[2], 528.7, 0.1)
  near(forces.wormForce[0], 0, 1e-9)
  near(forces.wormForce[1], 0, 1e-9)
  near(torque, 660.9, 0.1)
})
