/** What can be done while looking at the mesh: go near it on the stage, and make its play seen. */
import { useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { quantityText } from '../instrument/reading-text.ts'
import { wormPlay } from './contact-words.ts'
import { lookFrom } from '../panel/stage-look.ts'
import { turnBackAndForth } from './there-and-back.ts'

export function MeshActions() {
  const workshop = useWorkshop()
  const { view } = workshop
  const gearing = useMachine((machine) => machine.gearing)
  const inside = useView((state) => state.view.name === 'mesh')
  const picture = useView(({ plan }) => plan === 'no' || plan === 'chosen')
  const look = () => view.setState((state) => lookFrom(state, inside ? 'gears' : 'mesh'))
  const play = wormPlay(gearing)
  return (
    <>
      <div className="gear-actions">
        {picture && (
          <button type="button" className="button" onClick={look}>
            {inside ? 'Back to the gears' : 'Look into the mesh'}
          </button>
        )}
        {play > 0 && (
          <button type="button" className="button" onClick={() => turnBackAndForth(workshop, play)}>
            Turn back and forth
          </button>
        )}
      </div>
      <p>
        {play > 0
          ? `Turn back by hand: the wheels wait for ${quantityText(play, '°')} of the worm.`
          : 'No backlash is given: both flanks fit, and the wheels follow the worm at once.'}
      </p>
    </>
  )
}
