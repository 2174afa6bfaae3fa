import type { Workshop } from '../frame/workshop.ts'

/** Puts the left wheel in at another tooth: one step to undo. */
export const putIn = ({ document }: Pick<Workshop, 'document'>, toothOffset: number): void =>
  document.edit((machine) =>
    machine.outputs.toothOffset === toothOffset
      ? machine
      : { ...machine, outputs: { ...machine.outputs, toothOffset } },
  )
