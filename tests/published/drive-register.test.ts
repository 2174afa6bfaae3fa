/**
 * Register of the printed figures that were collected for the drive, by their numbers in that collection: which test
 * holds the program to each, and what of an entry none does, with the reason. AC supply and rectifiers, CH choppers, M
 * motors, S series motors, U universal motors, B brushes, TH heat, F fans, BR bearings, RD loads, U7 uncertainty, SP
 * stroboscope, SF safety.
 */
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'

/** File to titles of its tests, or their beginnings, each with the entries that it checks. */
const CHECKED: Readonly<Record<string, readonly (readonly [title: string, entries: readonly string[]])[]>> = {
  'drive-supply': [
    ['peak and mean of 230 V behind a bridge', ['AC-01']],
    ['mean of 230 V behind one diode', ['AC-02']],
    ['shape behind $rectifier', ['AC-03']],
    ['%f V of 230 V and 10 %%', ['AC-04', 'AC-05']],
    ['%f Hz at a 50 Hz supply', ['AC-05']],
    ['smoothed bridge', ['AC-08']],
    ['two drops of 0.7 V', ['AC-22']],
    ['feeding R, L and an emf', ['CH-02']],
    ['feeding R and L at half duty', ['CH-03']],
  ],
  'drive-phase-control': [
    ['a thyristor charging 150 V', ['AC-11']],
    ['10 ohm from 60 deg', ['AC-12']],
    ['a heater of 1000 W', ['AC-13']],
    ['half-controlled bridge from 45 deg', ['AC-15']],
    ['triac and 20 ohm from 45 deg', ['AC-16']],
    ['only one half wave controlled', ['AC-17']],
    ['which is why one half wave is refused', ['AC-17']],
    ['bursts of 6 cycles', ['AC-19']],
  ],
  'drive-motors': [
    ['constant and loss from a run without load', ['M-01']],
    ['output at 48 V and 1700 r/min', ['M-01']],
    ['speed with 100 W at $voltage V', ['M-02']],
    ['no-load speed from the stall', ['M-04']],
    ['speed with 1.2 N m and stall', ['M-05']],
    ['128 V at 3000 r/min', ['M-07']],
    ['speed from 21.9 kW', ['M-08']],
    ['mechanical time constant J R/K2', ['M-10']],
    ['brush drop $brushDrop V', ['M-11', 'M-27']],
    ['its stall current is 48.54 A', ['M-11']],
    ['largest power at half the no-load speed', ['M-12']],
    ['fully controlled bridge at 30 and 45 deg', ['M-16']],
    ['least duty at standstill', ['M-18']],
    ['top speed at full duty', ['M-18']],
    ['duty for 350 r/min', ['M-20']],
    ['speed at $part of the load', ['M-22']],
    ['locked-rotor current', ['M-23']],
  ],
  'drive-series-motors': [
    ['a fan slowed from 300 to 200 r/min', ['S-01']],
    ['7460 W and 1040 W lost in turning', ['S-02']],
    ['44 % more torque, and half the current', ['S-03']],
    ['behind a chopper', ['S-05']],
    ['from a point of the magnetisation curve', ['S-08']],
    ['flux brought to 70 % by a diverter', ['M-26']],
    ['1 A at 220 V on either', ['U-01']],
    ['17.58 A at 120 V and 8000 r/min', ['U-04']],
    ['at 60 deg', ['M-14']],
  ],
  'drive-chains': [
    ['1 A at 220 V and 1606 r/min', ['U-01']],
    ['17.58 A at 120 V, 60 Hz', ['U-04']],
    ['a fan slowed by a resistor', ['S-01']],
    ['behind a chopper at 2626.1 r/min', ['S-05']],
    ['magnet motor behind triac and bridge', ['M-14']],
  ],
  'drive-waves': [
    ['feeding R, L and an emf', ['CH-02']],
    ['feeding R and L at half duty', ['CH-03']],
  ],
  'drive-brushes': [
    ['assigned for calculations', ['B-01']],
    ['of a pair of carbon brushes', ['B-02']],
    ['classes: guides of brush makers', ['B-03']],
    ['classes and what is usual', ['B-04']],
    ['heat of two brushes of 2 N', ['B-05']],
    ['of a medium industrial machine', ['B-06']],
    ['of a small motor with magnets', ['B-07']],
    ['five grades of sparking', ['B-08']],
  ],
  'drive-heat': [
    ['coefficients at 20 degC', ['TH-01']],
    ['3.42 to 4.22 ohm', ['TH-02']],
    ['18, 20 and 21 ohm', ['TH-04']],
    ['20 K after 30 and 30 K after 60 minutes', ['TH-08']],
    ['24 K after one hour and 37 K after two', ['TH-09']],
    ['the fit of readings agrees', ['TH-08', 'TH-09']],
    ['30 minutes on and 45 off', ['TH-10']],
    ['0.08 K/min at 20 K', ['TH-12']],
    ['a load on for 10 s and off for 20', ['TH-13']],
    ['17 K above class F', ['TH-15']],
    ['four fifths and eleven tenths of the load', ['TH-16']],
    ['a pipe at 200 degC', ['TH-17']],
    ['classes: IEC 60085', ['TH-19']],
    ['rises of rotating machines', ['TH-20']],
    ['rises of household appliances', ['TH-21']],
    ['the same rise with the air 3 K warmer', ['TH-22']],
    ['coefficients in air', ['TH-23']],
    ['a thermometer set to 0.95', ['TH-24']],
    ['emissivity of %s', ['TH-25']],
  ],
  'drive-fan': [
    ['a test moved to denser air', ['F-01']],
    ['a tenth slower', ['F-04']],
    ['twice as fast', ['F-04']],
    ['air at 20 and 15 degC', ['F-05']],
  ],
  'drive-bearings': [
    ['rating for 5000 h', ['BR-01']],
    ['life under 500 lbf across', ['BR-02']],
    ['rating for a life of 1248', ['BR-04']],
    ['e and Y at Fa/C0', ['BR-07']],
    ['life with the %s ring turning', ['BR-08']],
    ['life in hours', ['BR-09']],
    ['rating for three loads by turns', ['BR-10']],
    ['friction power', ['BR-11']],
    ['limits of pressure times speed', ['BR-12']],
    ['a bush of 8 mm', ['BR-13']],
    ['two loads between them', ['BR-14']],
    ['loads that overhang both ends', ['BR-15']],
  ],
  'drive-loads': [
    ['through a mesh of 10 and 90 %', ['RD-01']],
    ['a geared load and a lifted one', ['RD-02']],
    ['a gear and a belt without loss', ['RD-03']],
    ['inertia from 70 N m', ['RD-04']],
    ['reversal against a load that brakes', ['RD-06']],
    ['1500 N m on 2500 kg m2', ['RD-07']],
    ['a car on a slope', ['RD-08']],
    ['a flywheel of 140 kg m2', ['RD-09']],
    ['a disc of 300 N', ['RD-10']],
    ['inertia and losses, 1525 to 1475', ['RD-11']],
    ['mechanical and iron loss apart', ['RD-12']],
    ['stray loss with 10 A', ['RD-13']],
    ['time constants and poles', ['M-10']],
  ],
  'drive-uncertainty': [
    ['resistance and reactance from correlated readings', ['U7-01']],
    ['voltmeter of 14 millionths', ['U7-02']],
    ['one digit, and a rectangle', ['U7-03']],
    ['shaft power by dynamometer', ['U7-04']],
    ['one per cent of full scale', ['U7-06']],
    ['multimeter of 2.5 %', ['U7-07']],
  ],
  'drive-stroboscope': [
    ['1500 and 1000 flashes a minute', ['SP-01']],
    ['2500 and 5000/3 flashes a minute', ['SP-02']],
    ['three rates', ['SP-03']],
    ['3000 r/min under %i flashes', ['SP-04']],
    ['a fan at 1000 r/min', ['SP-05']],
    ['a flash of 100 us', ['SP-07']],
    ['three spokes at 30 pictures', ['SP-08']],
    ['%i marks under 30 flashes', ['SP-09']],
    ['lamps at 50 Hz', ['SP-10']],
    ['below 300 flashes a minute', ['SP-11']],
  ],
  'drive-safety': [
    ['34 V at the pins', ['SF-01']],
    ['limits as printed', ['SF-02']],
    ['stores 5.29 J', ['SF-03']],
    ['sockets are CAT II', ['SF-04']],
  ],
}

/** Entries that no test can hold the program to, and why. */
const LEFT_OUT: Readonly<Record<string, string>> = {
  'SF-05': 'cautions are sentences of the page, without figures',
}

/** What of a checked entry no test holds the program to, and why. */
const PARTLY: Readonly<Record<string, string>> = {
  'AC-05': 'the 15 % below nominal that are never passed: the program warns already at 10 %',
  'M-20': 'the duty of braking: no machine has a chopper that returns power',
  'TH-21': 'the limits by thermocouple: the program tells a winding by its resistance',
}

/** The whole collection. */
const ENTRIES = `
  AC-01 AC-02 AC-03 AC-04 AC-05 AC-08 AC-11 AC-12 AC-13 AC-15 AC-16 AC-17 AC-19 AC-22 CH-02 CH-03
  M-01 M-02 M-04 M-05 M-07 M-08 M-10 M-11 M-12 M-14 M-16 M-18 M-20 M-22 M-23 M-26 M-27
  S-01 S-02 S-03 S-05 S-08 U-01 U-04 B-01 B-02 B-03 B-04 B-05 B-06 B-07 B-08
  TH-01 TH-02 TH-04 TH-08 TH-09 TH-10 TH-12 TH-13 TH-15 TH-16 TH-17 TH-19 TH-20 TH-21 TH-22 TH-23
  TH-24 TH-25 F-01 F-04 F-05 BR-01 BR-02 BR-04 BR-07 BR-08 BR-09 BR-10 BR-11 BR-12 BR-13 BR-14 BR-15
  RD-01 RD-02 RD-03 RD-04 RD-06 RD-07 RD-08 RD-09 RD-10 RD-11 RD-12 RD-13
  U7-01 U7-02 U7-03 U7-04 U7-06 U7-07 SP-01 SP-02 SP-03 SP-04 SP-05 SP-07 SP-08 SP-09 SP-10 SP-11
  SF-01 SF-02 SF-03 SF-04 SF-05
`
  .trim()
  .split(/\s+/)

const checked = new Set(Object.values(CHECKED).flatMap((titles) => titles.flatMap(([, entries]) => entries)))
const listed = (reasons: Readonly<Record<string, string>>) =>
  Object.entries(reasons)
    .map(([entry, reason]) => `  ${entry}: ${reason}`)
    .join('\n')

test('every entry of the collection is checked by a test or left out for a reason, and none is both', () => {
  expect([...checked, ...Object.keys(LEFT_OUT)].sort()).toEqual([...ENTRIES].sort())
  for (const entry of Object.keys(PARTLY)) expect(checked).toContain(entry)
  console.info(`${checked.size} entries checked, left out:\n${listed(LEFT_OUT)}\nin part:\n${listed(PARTLY)}`)
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
