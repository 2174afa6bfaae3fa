/** The numbers of the parts that carry the current, from socket or battery to the brushes. */
import type { Machine } from '../../sim/machine/machine.ts'
import type { ChainElement } from '../../sim/pose/electric-chain.ts'
import { isAlternating, isSmoothed } from './motor-state.ts'
import { type Numbers, type PartNumber, given, number } from './part-number.ts'
import type { Situation } from './situation.ts'

/** What the person has set at the speed control. */
export function stepNumbers({ machine: { control }, setting }: Situation): readonly PartNumber[] {
  const count = { name: 'Step', text: `${setting + 1} of ${control.steps.length}` }
  switch (control.kind) {
    case 'taps':
      return [count, given('Open-circuit voltage of the tap', control.steps[setting]?.voltage ?? 0, 'V')]
    case 'chopper':
      return [
        count,
        given('On for', control.steps[setting]?.duty ?? 0, '%'),
        given('Switched', control.frequency, 'kHz'),
      ]
    case 'phase':
      return [count, given('Firing angle', control.steps[setting]?.angle ?? 0, '°')]
    case 'half-wave':
      return [count, given('Half waves used, of two', control.steps[setting]?.waves ?? 0, '')]
    case 'crank':
      return []
  }
}

const currents = ({ machine, setting, reading }: Situation): readonly PartNumber[] => [
  number(
    isAlternating(machine, setting) ? 'Mean size of the motor current' : 'Mean motor current',
    reading.currentMean,
    'A',
    'meanCurrent',
  ),
  number('R.m.s. motor current', reading.currentRms, 'A'),
]

/** What the speed control itself turns into heat; a tap switch nothing that is computed. */
function settingLosses({ machine, reading }: Situation): readonly PartNumber[] {
  switch (machine.control.kind) {
    case 'phase':
      return [number('Lost in its triac', reading.switchLoss, 'W', 'switchLoss')]
    case 'half-wave':
      return [number('Lost in its diodes', reading.diodeLoss, 'W', 'diodeLoss')]
    case 'chopper':
      return [
        number('Lost in its switch', reading.switchLoss, 'W', 'switchLoss'),
        ...(machine.rectifier
          ? []
          : [number('Lost in its freewheel diode', reading.diodeLoss, 'W', 'diodeLoss')]),
      ]
    case 'taps':
    case 'crank':
      return []
  }
}

const inLine = ({ machine, reading }: Situation): readonly PartNumber[] =>
  machine.transformer ? [] : [number('Lost in the line', reading.sourceResistanceLoss, 'W', 'sourceLoss')]

const diodesName = (machine: Machine): string =>
  machine.control.kind === 'chopper' ? 'Lost in its and the freewheel diode' : 'Lost in its diodes'

type Electric = ChainElement | 'plug' | 'battery' | 'leads'

export const ELECTRIC_NUMBERS: Readonly<Record<Electric, Numbers>> = {
  plug: (situation) => [
    number('Voltage, r.m.s.', situation.reading.wallVoltage, 'V'),
    number('Frequency', situation.reading.wallFrequency, 'Hz'),
    number('Current, r.m.s.', situation.reading.wallCurrent, 'A'),
    number('Power', situation.reading.wallPower, 'W'),
    ...inLine(situation),
  ],
  battery: ({ machine: { supply }, reading }) => [
    number('Voltage without load', reading.wallVoltage, 'V'),
    number('Mean current', reading.wallCurrent, 'A'),
    number('Power', reading.wallPower, 'W'),
    ...(supply.kind === 'battery' ? [given('Inner resistance', supply.resistance, 'Ω')] : []),
    number('Lost inside', reading.sourceResistanceLoss, 'W', 'sourceLoss'),
  ],
  transformer: ({ machine, setting, reading }) => [
    given('Primary voltage', machine.transformer?.primaryVoltage ?? 0, 'V'),
    ...(machine.control.kind === 'taps'
      ? [given('Open-circuit voltage', machine.control.steps[setting]?.voltage ?? 0, 'V')]
      : []),
    number('Lost in its core', reading.coreLoss, 'W', 'coreLoss'),
    number('Lost in its windings', reading.sourceResistanceLoss, 'W', 'sourceLoss'),
  ],
  rectifier: (situation) => [
    given('Drop of one diode', situation.machine.rectifier?.diodeDrop ?? 0, 'V'),
    ...(isSmoothed(situation.machine) ? [] : currents(situation).slice(0, 1)),
    number(diodesName(situation.machine), situation.reading.diodeLoss, 'W', 'diodeLoss'),
  ],
  capacitor: ({ machine, reading }) => [
    given('Capacitance', machine.rectifier?.capacitance ?? 0, 'µF'),
    number('Mean voltage', reading.capacitorVoltage, 'V', 'capacitorVoltage'),
    number('Ripple, least to most', reading.capacitorRipple, 'V'),
    given('Bleed resistor', machine.rectifier?.bleedResistance ?? 0, 'kΩ'),
    number('Lost in the bleed resistor', reading.bleedLoss, 'W', 'bleedLoss'),
  ],
  setting: (situation) => [...stepNumbers(situation), ...settingLosses(situation)],
  leads: currents,
}
