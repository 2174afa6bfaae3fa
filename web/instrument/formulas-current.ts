/** Formulas of the current on its way: what drives it, and what it loses from the supply to the brushes. */
import type { Formula, FormulaRow } from './formula.ts'
import { type Tree, type TreePart, fraction, magnitude, minus, power, product, sum } from './formula-tree.ts'
import { isAlternating, isSmoothed } from './motor-state.ts'
import type { Situation } from './situation.ts'
import { COLD } from '../store/bench.ts'

const LEDGER = 'Part of the ledger: what goes in is what comes out, what is lost and what is stored.'
const ONE_SENSE = 'Holds while the current keeps its sense and the supply reaches the machine.'
const SOLVED = 'It is solved over one period of the supply, from instant to instant'

const loss = (title: string, right: Tree, said: string): Omit<FormulaRow, 'reading'> => ({
  title,
  letter: 'P',
  unit: 'W',
  right,
  source: `${said} ${LEDGER}`,
})
/** Where no one number of the current gives the mean, the law stands alone. */
const lawOfLoss = (title: string, right: Tree, said: string) => ({
  ...loss(title, right, said),
  lawOnly: true,
  holds: 'The law holds at every instant; its mean over one period is shown.',
})

/** What the duty leaves on, as a part of 1. */
const duty = fraction('duty', 100)
const off = sum(1, minus(duty))

const DIODES = 'Loss in the diodes'

const bridgeLoss = (situation: Situation): Omit<FormulaRow, 'reading'> => {
  const { machine } = situation
  if (!isSmoothed(machine))
    return {
      ...loss(DIODES, product(2, 'Vd', 'I'), 'The current passes two diodes at a time.'),
      holds: ONE_SENSE,
    }
  const chopped = machine.control.kind === 'chopper'
  const charging = sum(chopped ? product(duty, 'I') : 'I', fraction('VC', 'Rb'))
  const bridge = product(2, 'Vd', charging)
  const said =
    'Over a period the bridge brings on what motor and bleed resistor take, through two diodes at a time.'
  return {
    ...loss(DIODES, chopped ? sum(bridge, product('Vf', off, 'I')) : bridge, said),
    holds: 'Holds in steady running, with the current below any limit that is set.',
  }
}

const diodeLoss = (situation: Situation): FormulaRow => ({
  ...diodeLaw(situation),
  reading: ({ reading }) => reading.diodeLoss,
})

function diodeLaw(situation: Situation): Omit<FormulaRow, 'reading'> {
  const { rectifier, control } = situation.machine
  if (rectifier) return bridgeLoss(situation)
  if (control.kind === 'half-wave')
    return {
      ...loss(
        DIODES,
        product('Vd', 'I'),
        'The current passes one diode at a time, in series or freewheeling.',
      ),
      holds: 'Where both half waves are used the diode is bridged, and loses nothing.',
    }
  const freewheel = product('Vf', sum('I', minus('Iin')))
  const said = 'Current of the motor that the battery does not give passes through the freewheel diode.'
  return { ...loss('Loss in the freewheel diode', freewheel, said), holds: ONE_SENSE }
}

const switchLoss = ({ machine, setting }: Situation): FormulaRow => {
  const reading = ({ reading: { switchLoss: watts } }: Situation) => watts
  const { control, rectifier } = machine
  if (control.kind === 'phase') {
    const said = 'A triac drops nearly the same voltage at any current: common practice.'
    const title = 'Loss in the triac'
    if (isAlternating(machine, setting))
      return { ...loss(title, product('VT', 'I'), said), holds: ONE_SENSE, reading }
    return { ...lawOfLoss(title, product('VT', magnitude('is')), said), reading }
  }
  const bridged = 'At 100 % a relay bridges the switch, which then loses nothing.'
  const current: TreePart = rectifier ? product(duty, 'I') : 'Iin'
  return {
    ...loss(
      'Loss in the switch',
      product('Vsw', current),
      'Its drop times the mean of the current through it.',
    ),
    holds: bridged,
    reading,
  }
}

const sourceLoss = ({ machine }: Situation): FormulaRow => {
  const reading = ({ reading: { sourceResistanceLoss } }: Situation) => sourceResistanceLoss
  const said = 'Heat goes with the square of the current.'
  if (machine.supply.kind === 'mains' && machine.transformer === null)
    return { ...loss('Loss in the line', product('Rs', power('Iin', 2)), said), reading }
  const title = machine.transformer ? 'Loss in the windings of the transformer' : 'Loss inside the battery'
  return { ...lawOfLoss(title, product('Rs', power('is', 2)), said), reading }
}

const copperLoss = ({ winding, machine }: Situation): FormulaRow => {
  const cold = winding === COLD
  const told = `Heat goes with the square of the current${cold ? '' : ', and copper resists more as it warms (IEC 60028)'}.`
  const warmer = fraction(sum(234.5, 'warmth'), 254.5)
  const square = power('Irms', 2)
  const series = machine.motor?.kind === 'universal'
  return {
    ...loss(
      series ? 'Loss in armature and field' : 'Loss in the winding',
      cold ? product('Ra', square) : product('Ra', warmer, square),
      told,
    ),
    reading: ({ reading }) => reading.copperLoss,
  }
}

const currentTitle = ({ machine, setting }: Situation): string =>
  isAlternating(machine, setting) ? 'Mean size of the motor current' : 'Mean motor current'

const meanCurrent = (situation: Situation): FormulaRow => {
  const { machine } = situation
  const series = machine.motor?.kind === 'universal'
  const resistance = isSmoothed(machine) ? 'Rwarm' : sum('Rs', 'Rwarm')
  return {
    title: currentTitle(situation),
    letter: series ? 'dΨ/dt' : 'L di/dt',
    unit: 'A',
    right: sum('u', minus(product(resistance, 'i')), minus('e'), minus('vb')),
    lawOnly: true,
    source: series
      ? `Ψ is the flux linkage of the winding. As the iron fills it grows less than the current, and so does the emf k i ω. ${SOLVED}. Saturation after Frölich, from memory.`
      : `L is all inductance in the current’s way. ${SOLVED}.`,
    holds: `The mean ${isAlternating(machine, situation.setting) ? 'of its size ' : ''}over one period is shown.`,
    reading: ({ reading }) => reading.currentMean,
  }
}

export const CURRENT_FORMULAS = {
  meanCurrent,
  capacitorVoltage: {
    title: 'Mean voltage of the smoothing capacitor',
    letter: 'C dv/dt',
    unit: 'V',
    right: sum(magnitude('is'), minus('i'), minus(fraction('vC', 'Rb'))),
    lawOnly: true,
    source: `The capacitor takes what comes through the bridge and does not go on. ${SOLVED}.`,
    holds: 'i counts while it passes the switch, where there is one. The mean over one period is shown.',
    reading: ({ reading }) => reading.capacitorVoltage,
  },
  sourceLoss,
  diodeLoss,
  switchLoss,
  bleedLoss: {
    ...lawOfLoss(
      'Loss in the bleed resistor',
      fraction(power('vC', 2), 'Rb'),
      'It stays across the capacitor all the time.',
    ),
    reading: ({ reading }) => reading.bleedLoss,
  },
  copperLoss,
  brushLoss: {
    ...loss(
      'Loss where the brushes touch',
      product('vb', magnitude('I')),
      'A carbon brush drops nearly the same voltage at any current: common practice.',
    ),
    holds: 'Holds while the current keeps its sense, or its size is what is averaged.',
    reading: ({ reading }) => reading.brushLoss,
  },
  coreLoss: {
    ...loss(
      'Loss in the core of the transformer',
      fraction(power('V', 2), 'RFe'),
      'Stands for the heat in the iron, as a resistance across the mains.',
    ),
    holds: 'Holds while it is plugged in.',
    reading: ({ reading }) => reading.coreLoss,
  },
} satisfies Record<string, Formula>
