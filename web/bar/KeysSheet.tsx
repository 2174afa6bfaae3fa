/** The keys, and what the program is and is not. */
import { useEffect, useRef } from 'react'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { toggleTheme } from './view-actions.ts'

const KEYS: readonly (readonly [string, string])[] = [
  ['Space', 'turn, stop'],
  ['1', 'one wheel turn by hand'],
  ['2', 'one worm turn'],
  ['3', 'a quarter turn of the worm'],
  ['4', 'one tooth of the wheels'],
  ['5, ←, →', 'one degree of the worm'],
  ['Shift + 1 to 5', 'the same, back'],
  ['0', 'zero the counts'],
  [', and .', 'slower and faster'],
  ['V', 'next view'],
  ['C', 'case: clear, off, closed'],
  ['X', 'apart, together'],
  ['P', 'plan view'],
  ['L', 'large, for a projector'],
  ['T', 'light or dark'],
  ['Page down, →', 'in a lesson: next'],
  ['Page up, ←', 'in a lesson: back'],
  ['Home', 'in a lesson: the first topic'],
  ['. or B', 'in a lesson, large: cover the stage'],
  ['Alt + 1 to 4', 'the four ways'],
  ['Ctrl + Z, Ctrl + Shift + Z', 'undo, redo'],
  ['Escape', 'close, leave large'],
]

export function KeysSheet() {
  const workshop = useWorkshop()
  const { view } = workshop
  const open = useView((state) => state.sheet === 'keys')
  const singleKeys = useView((state) => state.singleKeys)
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    if (open) dialog.current?.showModal()
    else dialog.current?.close()
  }, [open])
  const close = () => view.setState({ sheet: 'none' })
  return (
    <dialog className="sheet" ref={dialog} aria-labelledby="keys-title" onClose={close}>
      <div className="sheet-head">
        <h2 id="keys-title">Keys and help</h2>
        <button type="button" className="button plain icon" onClick={close}>
          <Icon name="close" />
          <span className="unseen">Close</span>
        </button>
      </div>
      <dl className="keys">
        {KEYS.map(([key, words]) => (
          <div key={key}>
            <dt className="number">{key}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      <button type="button" className="button" onClick={() => toggleTheme(workshop)}>
        <Icon name="theme" />
        Light or dark
      </button>
      <label className="field">
        <input
          type="checkbox"
          checked={singleKeys}
          onChange={(event) => view.setState({ singleKeys: event.target.checked })}
        />
        Single keys
      </label>
      <h3>What is modelled</h3>
      <p>
        One shaft from motor to worm; two wheels driven without slip; the supply’s waves and their average;
        friction in the mesh, bearings and brushes; the fan; warming and cooling of winding, magnets and case;
        sparks at the brushes; fuse and current limit; run-up, steady running, coasting, a jam.
      </p>
      <h3>What is not</h3>
      <p>
        Wear, strength, bending and the sharing of load between teeth, armature reaction, the warmth of the
        transformer and the rectifier. A number here is no permission to open a live machine: unplug it, let
        it come to rest, and leave mains parts to licensed people and local rules.
      </p>
    </dialog>
  )
}
