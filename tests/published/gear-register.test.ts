/**
 * Register of the printed figures that were collected for worm gearing, by their numbers in that collection: which
 * test holds the program to each, or why none does. G sizes, F forces, P screws and hoists, C flanks, K senses and
 * play, X two wheels.
 */
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'

/** File to titles of its tests, or their beginnings, each with the entries that it checks. */
const CHECKED: Readonly<Record<string, readonly (readonly [title: string, entries: readonly string[]])[]>> = {
  'gear-proportions': [
    ['3 starts, 52 teeth, 6 per inch', ['G01']],
    ['normal from axial pressure angle', ['G02']],
    ['pair 1/30/10/5', ['G03']],
    ['whole table of the axial module pair 2/30', ['G07']],
    ['normal module pair with profile shift', ['G08']],
    ['normal module and lead of the axial module pair', ['G09']],
    ['standard centre distance $a', ['G10.2', 'G10.3', 'G10.4', 'G10.5', 'G10.6', 'G10.7', 'G10.8']],
    ['face widths of worm and wheel', ['G19']],
    ['blank width 2 m sqrt(q + 1)', ['G20']],
    ['thread is at least as long as pi m (4.5 + 0.02 z2)', ['G20']],
    ['screw parameter', ['G21']],
    ['depth of a full tooth of module 1', ['G22']],
    ['sizes of the 2/30 worm', ['F01']],
  ],
  'gear-limits': [
    ['diameter quotient is 7 to 25', ['G12']],
    ['lead angle is at most $largest deg', ['G15']],
    ['wheel has at least $least teeth', ['G17']],
    ['17.1 at 20 deg and 31.9 at 14.5 deg', ['G18']],
  ],
  'gear-forces': [
    ['speeds of the 2/30 worm', ['F01']],
    ['forces of the 2/30 worm at 1 hp', ['F02']],
    ['the same in SI', ['F03']],
    ['efficiency is $percent %', ['F04.1', 'F04.5', 'F04.10', 'F04.15', 'F04.20']],
    ['friction power and efficiency of the 3/52 set', ['F06']],
    ['axial force at 6 kW', ['F07']],
    ['power out and lost at 1.2 kW', ['F08']],
    ['efficiency with the pressure angle left out', ['F12']],
    ['speeds, efficiency and loads of the 1/24 set', ['F17']],
    ['sliding speed', ['F20']],
    ['a screw of 5 deg that just locks', ['F23']],
    ['second wheel on the 2/30 worm', ['X01']],
  ],
  'gear-screws': [
    ['square power screw', ['P01']],
    ['triple-start square screw', ['P02']],
    ['square lead screw', ['P03']],
    ['Acme lead screw', ['P04']],
    ['worm hoist of one start', ['P08']],
    ['worm hoist of two starts', ['P09']],
    ['worm hoist with a handle', ['P11']],
  ],
  'gear-flanks': [
    ['base lead angle and base radius of an involute helicoid', ['C01']],
    ['axial and transverse pressure angle', ['C02']],
    ['helicoid identity on %s', ['C04']],
    ['mid-plane of a ZA wheel is an involute', ['C05']],
    ['flank has the profile radius r2 sin alpha_x', ['C05']],
    ['contact ratio in the mid-plane of rack and 30 teeth', ['C06']],
    ['equation of meshing on %s', ['C07']],
    ['turning senses of 2/30', ['K03']],
    ['backlash from centre distance', ['K04']],
    ['backlash along the normal', ['K04']],
    ['play of a wheel of 90 mm', ['K05']],
    ['far side shows half a pitch for odd starts', ['X02']],
    ['both wheels have the hand of the worm', ['X03']],
  ],
  'gear-register': [['four of the five standard profiles are built', ['C03']]],
}

/** Entries that no test can hold the program to, and why. */
const LEFT_OUT: Readonly<Record<string, string>> = {
  G11: 'a series of preferred modules: the program takes any module and offers no list',
  G13: 'a window of worm diameters for steel and bronze: the program asks for a diameter quotient (G12) and does not rate',
  G14: 'the window of G13 in millimetres',
  G16: 'pressure angles recommended by lead angle: the program keeps to the limits of lead angle by pressure angle (G15)',
  F10: 'Lewis strength: the program does not rate strength',
  'F13.1': 'friction over sliding speed: friction is a number of the machine, and does not follow the speed',
  'F13.2': 'friction over sliding speed, as F13.1',
  'F13.5': 'friction over sliding speed, as F13.1',
  'F13.10': 'friction over sliding speed, as F13.1',
  'F13.20': 'friction over sliding speed, as F13.1',
  F14: 'a fit of friction over sliding speed: as F13.1; its value is put into the test of F17',
  F15: 'the fit of F14 in SI',
  F16: 'the fit of F14 at its break',
  F18: 'a rating of steel on bronze: the program does not rate wear or heat',
  F19: 'the ratio factor of the rating of F18',
  F25: 'the materials factor of the rating of F18',
}

/** The whole collection, except the entries about materials. */
const ENTRIES = `
  G01 G02 G03 G07 G08 G09 G10.2 G10.3 G10.4 G10.5 G10.6 G10.7 G10.8 G11 G12 G13 G14 G15 G16 G17
  G18 G19 G20 G21 G22 F01 F02 F03 F04.1 F04.5 F04.10 F04.15 F04.20 F06 F07 F08 F10 F12 F13.1 F13.2
  F13.5 F13.10 F13.20 F14 F15 F16 F17 F18 F19 F20 F23 F25 P01 P02 P03 P04 P08 P09 P11 C01 C02 C03
  C04 C05 C06 C07 K03 K04 K05 X01 X02 X03
`
  .trim()
  .split(/\s+/)

const checked = new Set(Object.values(CHECKED).flatMap((titles) => titles.flatMap(([, entries]) => entries)))

test('every entry of the collection is checked by a test or left out for a reason, and none is both', () => {
  expect([...checked, ...Object.keys(LEFT_OUT)].sort()).toEqual([...ENTRIES].sort())
  console.info(
    `${checked.size} entries checked, ${Object.keys(LEFT_OUT).length} left out:\n` +
      Object.entries(LEFT_OUT)
        .map(([entry, reason]) => `  ${entry}: ${reason}`)
        .join('\n'),
  )
})

test.each(Object.entries(CHECKED))('%s.test.ts has the tests that the register names', (file, titles) => {
  const text = readFileSync(new URL(`./${file}.test.ts`, import.meta.url), 'utf8')
  for (const [title] of titles) {
    // a title begins with its quote
    expect(
      ["'", '"', '`'].some((quote) => text.includes(`${quote}${title}`)),
      title,
    ).toBe(true)
  }
})

test('four of the five standard profiles are built: ISO/TR 10828, scope seen', () => {
  // A, N, I and K; C, hollow from a convex disc, is not, since its flanks touch on other terms
  const form = readFileSync(new URL('../../sim/machine/form.ts', import.meta.url), 'utf8')
  expect(form).toContain("profile: choice('ZA', 'ZN', 'ZI', 'ZK')")
})
