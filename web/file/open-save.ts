/** The machine as a file: written for a person to keep, read from anywhere. */
import { parseMachine, printMachine } from '../../sim/machine/file.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { Problem } from '../../sim/machine/problem.ts'
import { createStore } from 'zustand/vanilla'
import { saveFile } from './save-file.ts'

/** A machine takes 3 kB; more than this is not read at all [byte] */
export const MOST_FILE = 1_000_000

const LONGEST_NAME = 60
/** Names that some file systems keep for devices. */
const DEVICES = /^(con|prn|aux|nul|com\d|lpt\d)$/

/** 'Boot cleaner' to 'boot-cleaner.json'; letters and digits of any script stay, everything else becomes a hyphen. */
export function fileName({ name }: Machine): string {
  const words = name
    .normalize('NFC')
    .toLowerCase()
    .split(/[^\p{L}\p{M}\p{N}]+/u)
    .filter((word) => word !== '')
  const stem = [...words.join('-')].slice(0, LONGEST_NAME).join('').replace(/-$/, '')
  return stem === '' || DEVICES.test(stem) ? `machine${stem && '-'}${stem}.json` : `${stem}.json`
}

/** Hands the machine to the browser's own saving; returns the name it was given. */
export function saveMachine(machine: Machine): string {
  const name = fileName(machine)
  saveFile(name, 'application/json', printMachine(machine))
  return name
}

/** The lesson file that was dropped last, for the sheet of lessons; null before there was one. */
export const droppedLesson = createStore<{ readonly name: string; readonly text: string } | null>(() => null)

export interface Opening {
  /** Of the file that was opened. */
  readonly name: string
  /** Null when it could not be used. */
  readonly machine: Machine | null
  readonly problems: readonly Problem[]
  /** The text, where it is one of a lesson and not of a machine. */
  readonly lesson: string | null
}

const refused = (name: string, message: string): Opening => ({
  name,
  machine: null,
  problems: [{ path: '', severity: 'error', message }],
  lesson: null,
})

/** Files of both kinds are dropped on the same page. One that is torn is told apart too. */
const isLesson = (text: string): boolean => text.includes('"counterturnLesson"')

/** A file of the browser, or what stands for one. */
export type ReadableFile = Pick<File, 'name' | 'size' | 'text'>

export async function readMachineFile(file: ReadableFile): Promise<Opening> {
  if (file.size > MOST_FILE)
    return refused(
      file.name,
      `must be a file of at most ${MOST_FILE / 1000} kB, got ${Math.ceil(file.size / 1000)} kB`,
    )
  let text: string
  try {
    text = await file.text()
  } catch {
    return refused(file.name, 'must be a file that this browser may read, and it did not let itself be read')
  }
  const { name } = file
  if (isLesson(text)) return { name, machine: null, problems: [], lesson: text }
  return { name, ...parseMachine(text), lesson: null }
}
