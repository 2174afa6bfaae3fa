/** The ledger told in sentences. */
import type { Machine } from '../../sim/machine/machine.ts'
import { figure, quantityText } from '../instrument/reading-text.ts'
import type { Ledger, LedgerItem } from './ledger.ts'

const watts = (value: number): string => quantityText(value, 'W')

const SOURCES = { mains: 'the socket', battery: 'the battery', crank: 'the hand' } as const

const delivered = ({ parts }: Ledger): number =>
  parts.reduce((sum, { kind, watts: each }) => sum + (kind === 'left' || kind === 'right' ? each : 0), 0)

/** What is seen first: how much of it arrives. */
export function ledgerHeadline({ supply }: Machine, ledger: Ledger): string {
  const taken = ledger.input.watts
  const arrives = delivered(ledger)
  const source = SOURCES[supply.kind]
  if (arrives < 0 && taken <= 0) return `The loads give back ${watts(-arrives)}`
  if (arrives < 0) return `${watts(taken)} from ${source} and ${watts(-arrives)} from the loads, all lost`
  if (taken <= 0) return arrives > 0 ? `${watts(arrives)} reach the wheels` : 'No power flows'
  if (arrives === 0) return `Nothing reaches the wheels: ${watts(taken)} are lost`
  return `${figure((100 * arrives) / taken)} % of the power reaches the wheels`
}

function largestLoss({ parts }: Ledger): LedgerItem | null {
  let largest: LedgerItem | null = null
  for (const part of parts) if (part.kind === 'loss' && part.watts > (largest?.watts ?? 0)) largest = part
  return largest
}

/** Why: the largest loss, and what the moving parts take meanwhile. */
export function ledgerReason(ledger: Ledger): string {
  const largest = largestLoss(ledger)
  const stored = ledger.parts.find(({ kind }) => kind === 'stored')?.watts ?? 0
  const sentences: string[] = []
  if (largest) sentences.push(`The largest loss: ${largest.name.toLowerCase()}, ${watts(largest.watts)}.`)
  if (stored > 0) sentences.push(`${watts(stored)} speed up the moving parts.`)
  if (stored < 0) sentences.push(`Slowing down, the moving parts give back ${watts(-stored)}.`)
  return sentences.join(' ')
}

/** Whether it adds up, and what is missing if it does not. */
export function ledgerSum({ input, parts, rest }: Ledger): string {
  const open = parts.some(({ kind }) => kind === 'rest')
  return open
    ? `The parts add up to ${watts(input.watts - rest)}; ${watts(rest)} are unaccounted for.`
    : `The parts add up to ${watts(input.watts)}, nothing is unaccounted for.`
}

export const shareText = (part: number, whole: number): string =>
  whole > 0 ? `${figure((100 * part) / whole)} %` : ''
