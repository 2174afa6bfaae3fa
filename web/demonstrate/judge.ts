/**
 * The checks of a machine, which are fetched after the first picture. What needs them earlier waits, and is then done
 * in the order in which it came.
 */
import type { Machine } from '../../sim/machine/machine.ts'
import type { Problem } from '../../sim/machine/problem.ts'

type Check = (machine: Machine) => readonly Problem[]

const UNCHECKED: Problem = {
  path: '',
  severity: 'error',
  message: 'cannot be checked, since a part of this page could not be fetched; try again',
}

/** Why this machine cannot be used; null when it can. Without the checks it cannot. */
const refusal = (check: Check | null, machine: Machine): Problem | null =>
  check ? (check(machine).find(({ severity }) => severity === 'error') ?? null) : UNCHECKED

/** What is done in turn; it is given what tells why a machine cannot be used. */
type Act<T> = (refused: (machine: Machine) => Problem | null) => T | Promise<T>

export function createJudge(load: () => Promise<Check>) {
  let check: Check | null = null
  let fetching: Promise<void> | null = null
  let line: (() => void)[] = []

  const settle = (loaded: Check | null) => {
    check = loaded
    fetching = loaded && fetching
    const waiting = line
    line = []
    for (const act of waiting) act()
  }
  const fetch = (): Promise<void> => (fetching ??= load().then(settle, () => settle(null)))
  const refused = (machine: Machine) => refusal(check, machine)

  return {
    fetch,
    /** Done at once when the checks are here, else after all that came before it. */
    inTurn<T>(act: Act<T>): T | Promise<T> {
      if (check) return act(refused)
      return new Promise((resolve) => {
        line.push(() => resolve(act(refused)))
        void fetch()
      })
    },
  }
}

export const judge = createJudge(async () => (await import('../../sim/machine/check.ts')).checkMachine)
