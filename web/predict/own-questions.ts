/** What is asked about the machine on the bench, with its own counts: what its marks can settle. */
import type { Machine } from '../../sim/machine/machine.ts'
import { familyNamed } from '../../sim/question/bank.ts'
import type { Given } from '../../sim/question/family.ts'
import { questionWith } from '../../sim/question/instance.ts'
import type { Question } from '../../sim/question/question.ts'

/** In the order in which they are asked */
const FAMILIES = ['turns-worm', 'pair-sense', 'turns-wheel', 'teeth-passed', 'tooth-return'] as const

/** Worm turns in which teeth are counted. Our choice. */
const FEW_TURNS = 5

/** What the question is told besides the counts of the machine. */
function furtherGiven(family: (typeof FAMILIES)[number], { gearing }: Machine): Given {
  const { hand, wormStarts, wheelTeeth } = gearing
  if (family === 'turns-worm') return { N: 1 }
  if (family === 'pair-sense') return { hand }
  if (family === 'turns-wheel') return { N: Math.round((1.5 * wheelTeeth) / wormStarts) }
  return family === 'teeth-passed' ? { N: FEW_TURNS } : {}
}

/** How many they are */
export const ownCount = FAMILIES.length

/** The questions about a machine, first to last. */
export const ownQuestions = (machine: Machine): readonly Question[] =>
  FAMILIES.flatMap((name) => {
    const family = familyNamed(name)
    if (!family) return []
    const { wormStarts: z1, wheelTeeth: z2 } = machine.gearing
    const counts = { ...('z1' in family.example ? { z1 } : {}), ...('z2' in family.example ? { z2 } : {}) }
    return questionWith(family, { ...family.example, ...counts, ...furtherGiven(name, machine) })
  })
