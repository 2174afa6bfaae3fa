/** What the checks say of the machine as it is, for the fields to show beside themselves. */
import { createContext, useContext } from 'react'
import type { Problem } from '../../sim/machine/problem.ts'

export const FieldProblems = createContext<readonly Problem[]>([])

export const useFieldProblems = (path: string): readonly Problem[] =>
  useContext(FieldProblems).filter((problem) => problem.path === path)
