/** What the lesson editor says of beats, stages and problems. */
import { counted } from '../../sim/question/value-text.ts'
import { DEMO_MACHINES } from '../file/demo-machines.ts'
import { panelLabel } from '../panel/panels.ts'
import type { Beat, BeatStage } from '../store/lesson.ts'

/** "3 min, 2 questions", "2 min, can be left out" */
export function beatSummary({ minutes, questions, extra }: Beat): string {
  const asks = questions.length > 0 && counted(questions.length, 'question')
  return [`${minutes} min`, asks, extra && 'can be left out'].filter(Boolean).join(', ')
}

/** 'machine.gearing.wormStarts' to 'worm starts', 'picture.caseState' to 'case' */
const settingName = (path: string): string =>
  (path.split('.').at(-1) ?? path)
    .replace(/State$/, '')
    .replaceAll(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`)

const MOST_SETTINGS = 8

const settingText = ([path, value]: [string, unknown]): string => {
  const plain = typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean'
  return plain ? `${settingName(path)} ${value}` : settingName(path)
}

/** "Boot cleaner; worm starts 2, setting 4; panel Torque; turns by the drive." */
export function stageWords({ machine, set, panel, signs, lit, motion }: BeatStage): string {
  const name = DEMO_MACHINES.find(({ id }) => id === machine)?.machine.name ?? machine
  const settings = Object.entries(set)
  const more = settings.length - MOST_SETTINGS
  const told = settings.slice(0, MOST_SETTINGS).map(settingText).join(', ')
  const parts = [
    name,
    settings.length === 0 ? 'in its plain state' : told + (more > 0 ? ` and ${more} more` : ''),
    panel !== 'none' && `panel ${panelLabel(panel, 'demonstrate')}`,
    signs.length > 0 && `drawn: ${signs.join(', ')}`,
    lit && `light on the ${lit}`,
    motion === 'running' ? 'turns by the drive' : 'stands still',
  ]
  return `${parts.filter(Boolean).join('; ')}.`
}

const PLACED = {
  beats: 'Topic',
  questions: 'question',
  notes: 'note',
  facts: 'fact',
  options: 'option',
  slips: 'slip',
}

/** 'beats.3.questions.0.given.z1' to 'Topic 4, question 1, given z1' */
export function placeOf(path: string): string {
  const words: string[] = []
  let rest = path.split('.')
  while (rest.length > 0) {
    const [name = '', place = ''] = rest
    const placed = Object.entries(PLACED).find(([each]) => each === name)
    if (placed && /^\d+$/.test(place)) {
      words.push(`${placed[1]} ${Number(place) + 1}`)
      rest = rest.slice(2)
    } else {
      words.push(rest.join(' '))
      rest = []
    }
  }
  return words.join(', ') || 'The file'
}

/** The beat that a problem is of; null where it is of the whole lesson. */
export function beatOfPath(path: string): number | null {
  const [, place] = /^beats\.(\d+)/.exec(path) ?? []
  return place === undefined ? null : Number(place)
}
