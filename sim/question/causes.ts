/**
 * What leads to a wrong answer, in a sentence. A cause that a family words for itself is listed as 'family:cause'.
 * The figures in braces are the question's own; {u} is turns of the worm for one of a wheel.
 */
import type { Given } from './family.ts'
import { fractionText } from './value-text.ts'

/** Of counting turns and teeth, of senses, speeds and putting together */
const TURNS: Readonly<Record<string, string>> = {
  inverted: 'The ratio stands upside down: the worm makes the many turns, the wheel the few.',
  'teeth-passed:inverted': 'That counts turns of the wheel; its teeth were asked.',
  'no-starts': 'The worm has {z1} starts, so one turn moves {z1} teeth, not one.',
  'times-starts': 'Starts shorten the count; you lengthened it.',
  'turns-wheel:times-starts': 'More starts move the wheel further; you divided by them.',
  'wheel-speed:times-starts': 'More starts make the wheel faster; you divided by them.',
  'assembly-teeth:times-starts': 'The starts do not come into it: a tooth of the wheel is counted.',
  starts: 'Starts and teeth share a factor, so it comes back sooner.',
  'over-starts': 'More starts need more teeth for the same speed.',
  'both-added': 'The two wheels turn at the same time; turns are not added.',
  'teeth-passed:both-added': 'Both wheels move on at the same time; their teeth are not added.',
  halved: 'Turns are not shared out: each wheel makes the full count.',
  'turns-angle:halved': 'An angle is not shared out: each wheel turns by all of it.',
  'wheel-speed:halved': 'Speed is not shared out: each wheel has all of it.',
  'both-halved': 'Each wheel needs all its teeth; they are not split.',
  'one-side': 'That is from the worm to one wheel; the other shaft stands as far away on the other side.',
  'one-turn-only': 'That is for one turn of the wheel; here it is {N}.',
  'full-turn': 'That is a whole turn; only part of one is asked.',
  'one-turn': 'After one turn one of the two is back, but not the other.',
  'deg-as-turns': 'The number is in degrees: 360 of them make one turn.',
  'turns-as-deg': 'That is in turns; degrees were asked.',
  'whole-wheel': 'One turn of the worm passes {z1} of the teeth, not the whole wheel.',
  'whole-pitch': 'That is a full tooth; the thread on the other side is off by half of one.',
  'half-pitch': 'A tooth to the next tooth is a whole pitch.',
  'view-not-turned': 'From the other side the same turning looks reversed.',
  'other-wheel': 'That is the other wheel: the two turn opposite ways.',
  'other-hand': 'That fits a worm of the other hand.',
  'same-as-worm': 'The wheel turns on a crossing shaft; the worm’s sense does not carry over.',
  'same-way': 'Both inner sides move the same way along the worm, so the wheels turn opposite ways.',
  'same-way-2': 'Both inner sides move the same way along the worm, so the wheels turn opposite ways.',
  'worm-not-wheel': 'That counts the worm.',
  'worm-for-wheel': 'That counts the worm; the wheel was asked.',
  'worm-angle': 'That is how far the worm turns.',
  'wheel-angle': 'That is how far the wheel can move; the worm moves {u} times as far.',
  'wheel-only': 'The worm takes room too: add its diameter.',
  'not-extra': 'That is the whole count at the faster setting.',
  'no-60': 'Turns a minute become turns a second when divided by 60.',
  'tooth-return:product': 'That many teeth pass at most until then; turns were asked.',
  'ratio-rounded': 'It must be whole turns of both at once.',
  'all-teeth': 'Worm and wheel meet again sooner: look for a common factor.',
  'tooth-is-degree': 'One tooth is 360/{z2} degrees.',
  'always-aligns': 'With an odd number of starts the other side is half a pitch off.',
  parity: 'With an even number of starts both sides meet alike.',
  'exact-ratio': 'Counts are good to one turn: give the limit.',
  'both-plus': 'The extremes pull in opposite directions.',
  'one-only': 'Both counts are uncertain.',
  lowest: 'That is the smallest ratio.',
  'spur-rule':
    'Teeth add up for two spur wheels; a worm is as wide as its module times its diameter quotient.',
  'no-module': 'Multiply by the module.',
  'cut-short': 'Choose the nearest whole number.',
  radians: 'That is in radians.',
}

/** Of torque, power, friction and thrust */
const FORCES: Readonly<Record<string, string>> = {
  'torque-total:inverted': 'The wheel turns slower, so its torque is the larger one.',
  'torque-each:inverted': 'The wheel turns slower, so its torque is the larger one.',
  'back-torque:inverted': 'The wheel turns slower, so its torque is the larger one.',
  'back-torque:times-eff': 'The wheel must give more than without losses: divide.',
  'torque-motor:inverted': 'The motor needs the smaller torque.',
  'torque-motor:one-wheel': 'The motor carries both loads.',
  'torque-uneven:each-full': 'That is for both wheels together; take off what the other one takes.',
  'each-full': 'The total is shared; both wheels cannot have all of it.',
  'one-wheel': 'That is one wheel; both count.',
  'thrust-axial:one-wheel': 'Both meshes push on the same worm.',
  'thrust-radial:one-wheel': 'Both meshes push on the same worm.',
  'forgot-second': 'That is for both wheels together; each has half of it.',
  'power-shaft:forgot-second': 'That is one wheel; there are two.',
  doubled: 'Sharing halves the torque, it does not double it.',
  'halved-twice': 'Halved once too often.',
  'torque-unchanged': 'Fewer turns must mean more torque, or the power would vanish.',
  'no-loss': 'Friction at the mesh takes its part.',
  'divided-by-eff': 'A loss cannot raise the output.',
  'times-eff': 'The motor must give more than without losses: divide.',
  'loss-twice': 'The loss was taken twice.',
  'loss-share': 'That is the lost part, not the useful one.',
  'equal-share': 'They share equally only when the loads are equal.',
  'same-as-other': 'The other wheel has its own load.',
  'no-2pi': 'One turn is 2π radians.',
  'torque-times-rpm': 'Turns a minute must become radians a second first.',
  'losses-added': 'Each stage loses part of what is left: multiply.',
  averaged: 'Efficiencies in a row multiply; they are not averaged.',
  'last-stage': 'The stages before it lose power too.',
  'loss-for-output': 'That is what turned to heat.',
  'output-for-loss': 'That is what came out.',
  'always-locks': 'A worm holds only with enough friction for its lead.',
  'ratio-decides': 'The slope of the thread decides, not the ratio.',
  'friction-vs-lead-only': 'The sloping flank makes friction bite a little harder.',
  'divided-by-cos': 'The pressure angle lowers the limit.',
  'lead-angle-deg': 'That is the lead angle in degrees.',
  'lock-choice:no-starts': 'With {z1} starts the thread is {z1} times as steep.',
  'lock-friction:no-starts': 'With {z1} starts the thread is {z1} times as steep.',
  'mesh-efficiency:no-starts': 'With {z1} starts the thread is {z1} times as steep.',
  'one-minus-mu': 'Friction works along the thread; the slope multiplies its cost.',
  backward: 'That is with the wheel driving.',
  'no-pressure-angle': 'The flank leans by the pressure angle.',
  'thrust-radial:no-pressure-angle':
    'That takes each push along the worm; only a part goes across, as far as the flank leans.',
  'forward-eff': 'Driving backwards has its own, lower efficiency.',
  cancels: 'Across the worm they cancel; along it both push the same way.',
  'radial-adds': 'Opposite sides push against each other.',
  'diameter-for-radius': 'Torque is force times radius.',
  'lost-motion:diameter-for-radius': 'The play is at the wheel’s rim, a radius away from its axis.',
  'teeth-for-diameter': 'Teeth are a count, not a length.',
}

/** Of motor, supply, lamp, heat, brushes and safe work */
const SUPPLIES: Readonly<Record<string, string>> = {
  'no-resistance': 'Some volts are lost in the winding as current flows.',
  'no-brush-drop': 'The brushes keep about {vb} V for themselves.',
  'volts-only': 'Both the brush drop and the winding take their part first.',
  'rad-as-rpm': 'That is in radians a second.',
  'stall-current:product': 'Volts are divided by ohms, not multiplied by them.',
  'no-current': 'A stalled motor has no counter-voltage: its current is the largest, not zero.',
  'one-image': 'Still does not mean once: {p} positions are lit in turn.',
  denominator: 'Count the flashes between repeats, not the turns.',
  'strobe-images:product': 'The mark is back after {p} flashes, so it has no more places than that.',
  'true-speed': 'That is the real speed; the flashes show less.',
  'sign-lost': 'Mind the sign: forwards is plus, backwards is minus.',
  'one-flash-only': 'The flash rate was taken away once; take it away as often as comes nearest.',
  sum: 'The difference shows, not the sum.',
  'supply-pulses:mains-not-doubled': 'The bridge passes both half waves on: two pulses in each cycle.',
  'strobe-teeth:mains-not-doubled': 'A lamp is bright in both half waves: two flashes in each cycle.',
  'strobe-teeth:no-60': 'That is in turns a second; r/min were asked.',
  'tooth-symmetry': 'Every tooth looks alike: one pitch is enough.',
  'half-tooth': 'One whole tooth per flash looks still; two is the next time.',
  'per-second': 'That is for one second.',
  'four-diodes': 'Two diodes lead at a time; there are two bumps a cycle.',
  'straight-line': 'Warming slows as it nears its end.',
  'bleed-time:straight-line': 'The fall slows as the voltage nears its end.',
  'rise-only': 'Add the room’s temperature.',
  'heat-resistance:rise-only': 'That is the rise; add the temperature at the first measurement.',
  'rest-not-rise': 'That adds what is still missing, not what it has risen.',
  settled: 'It has not settled yet.',
  'coefficient-at-20': 'The 0.393 % a degree of the tables belongs to 20 °C only.',
  'ratio-of-degrees': 'Resistance is not proportional to degrees Celsius.',
  'ratio-of-kelvin': 'Copper’s line meets zero near −234.5 °C, not at absolute zero.',
  'no-speed': 'Faster rubbing wears faster, slower rubbing slower.',
  'speed-upside-down': 'Faster means fewer hours.',
  'no-1000': 'The wear is for 1000 hours.',
  'hours-for-days': 'Divide by the hours of a day’s use.',
  divided: 'The peak is above the meter’s value.',
  'supply-peak:doubled': 'The factor is root two.',
  'rms-is-peak': 'The meter shows the r.m.s.; the peak is 1.41 times it.',
  mean: 'That is the rectified mean.',
  'must-be-230': '230 V is a name; 207 to 253 V is normal.',
  'five-percent': 'The band is ten percent.',
  'anything-goes': 'The band has an upper and a lower end.',
  'transformer-tap:inverted': 'Fewer turns give fewer volts.',
  difference: 'Turns divide voltages; they are not subtracted.',
  peak: 'The meter value was asked, not the peak.',
  'one-constant': 'After one time constant 37 % is left.',
  'five-constants': 'By then it is nearly empty; a given voltage was asked.',
  'ten-log': 'The natural logarithm belongs here.',
  'cover-first': 'The cover comes off only when the plug is out and the charge is gone.',
  'switch-is-enough': 'A switch can be closed by mistake; a plug in your sight cannot.',
}

const SENTENCES: Readonly<Record<string, string>> = { ...TURNS, ...FORCES, ...SUPPLIES }

/** A figure that a sentence names: the question's own, or worked out from the counts. */
function figure(given: Given, name: string): number | string | undefined {
  const { z1, z2 } = given
  if (name === 'u' && typeof z1 === 'number' && typeof z2 === 'number') return z2 / z1
  return given[name]
}

/** The sentence of a cause with the parameters in it. A cause without a sentence is a mistake of the bank. */
export function causeSentence(family: string, cause: string, given: Given): string {
  const sentence = SENTENCES[`${family}:${cause}`] ?? SENTENCES[cause]
  if (sentence === undefined) throw new Error(`${family}: the cause ${cause} has no sentence`)
  return sentence.replaceAll(/\{(\w+)\}/g, (_, name: string) => {
    const value = figure(given, name)
    if (value === undefined) throw new Error(`${family}: the sentence of ${cause} needs ${name}`)
    return typeof value === 'number' ? fractionText(value) : value
  })
}
