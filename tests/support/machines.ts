import { readFileSync } from 'node:fs'
import type { Machine } from '../../sim/machine/machine.ts'

const machine = (file: string): Machine =>
  JSON.parse(readFileSync(new URL(`../../assets/machines/${file}.json`, import.meta.url), 'utf8')) as Machine

export const bootCleaner = machine('boot-cleaner')
export const ventOpener = machine('vent-opener')
export const cordWinder = machine('cord-winder')
export const classroomModel = machine('classroom-model')

export const demoMachines: readonly Machine[] = [bootCleaner, ventOpener, cordWinder, classroomModel]
