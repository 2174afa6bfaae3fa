/** Fields of a machine that are chosen, not measured. */
import { withCentres } from '../../sim/machine/centres.ts'
import { withValue } from '../../sim/machine/fields.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { type Choice, optionsOf } from './choice.ts'
import { HEAT_CHOICES } from './choices-heat.ts'
import { CHAIN_CHOICES } from './choices-chain.ts'

type Gearing = Machine['gearing']
type GearingChoice = 'hand' | 'profile' | 'wheelForm' | 'depthRule' | 'thinned'

/** A choice that is one text of the gearing. */
const ofGearing = <Name extends GearingChoice>(
  name: Name,
  told: Pick<Choice, 'label' | 'section' | 'place' | 'help'>,
  words: Readonly<Record<Gearing[Name], string>>,
): Choice => ({
  ...told,
  path: `gearing.${name}`,
  options: () => optionsOf(words),
  chosen: ({ gearing }) => gearing[name],
  choose: (machine, value) => withValue(machine, `gearing.${name}`, value),
})

export const CHOICES: readonly Choice[] = [
  ofGearing(
    'hand',
    {
      label: 'Hand of the worm',
      section: 'gearing',
      place: 'below',
      help: 'Which way the thread winds. Changing the hand turns both wheels the other way.',
    },
    { right: 'Right', left: 'Left' },
  ),
  ofGearing(
    'profile',
    {
      label: 'Thread profile',
      section: 'gearing',
      place: 'below',
      help: 'Form of the flank: straight in the plane of the axis (ZA), straight square to the thread (ZN), an involute (ZI), or ground by a disc with straight sides (ZK).',
    },
    { ZA: 'ZA', ZN: 'ZN', ZI: 'ZI', ZK: 'ZK' },
  ),
  ofGearing(
    'wheelForm',
    {
      label: 'Wheel form',
      section: 'teeth',
      place: 'above',
      help: 'Throated: hollowed round the worm, touches along lines and carries more, and wants exact setting along its axis. Plain: a helical gear, touches in a point and wears sooner, is cheap to mould and forgiving, and runs true only on a ZI worm.',
    },
    { throated: 'Throated', helical: 'Plain helical' },
  ),
  ofGearing(
    'depthRule',
    {
      label: 'Depth rule',
      section: 'teeth',
      place: 'above',
      help: 'Module that addendum and clearance count in: the axial one or the normal one. Mixed has a depth of its own: full depth outside the worm in the axial module, the rest in the normal one.',
    },
    { axial: 'Axial module', normal: 'Normal module', mixed: 'Mixed' },
  ),
  ofGearing(
    'thinned',
    {
      label: 'Backlash taken off',
      section: 'teeth',
      place: 'above',
      help: 'Which part is made thinner to give the backlash. The flanks stay what they are, so the motion stays even.',
    },
    { worm: 'The worm', wheel: 'The wheels' },
  ),
  {
    path: 'gearing.centres.kind',
    label: 'Axes given by',
    section: 'teeth',
    place: 'above',
    help: 'What is given of the distance between the axes of worm and wheel; the other follows from it. Changing this leaves everything where it is.',
    options: () => optionsOf({ shift: 'Profile shift', distance: 'Distance' }),
    chosen: ({ gearing }) => gearing.centres.kind,
    choose: (machine, value) => withCentres(machine, value === 'distance' ? 'distance' : 'shift'),
  },
  ...CHAIN_CHOICES,
  ...HEAT_CHOICES,
]
