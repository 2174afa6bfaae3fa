/** The machines that come with the program. The tests read their files with every check, so that the page need not. */
import classroomModel from '../../assets/machines/classroom-model.json?raw'
import cordWinder from '../../assets/machines/cord-winder.json?raw'
import ventOpener from '../../assets/machines/vent-opener.json?raw'
import { type DemoMachine, FIRST_MACHINE, demoMachine } from './first-machine.ts'

export const DEMO_MACHINES: readonly [DemoMachine, ...DemoMachine[]] = [
  FIRST_MACHINE,
  demoMachine(
    'vent-opener',
    ventOpener,
    'A battery drive that lifts two vents and holds them when it is off.',
  ),
  demoMachine('cord-winder', cordWinder, 'A fast mains winder with a universal motor.'),
  demoMachine('classroom-model', classroomModel, 'A printed model with a crank, to turn and count by hand.'),
]
