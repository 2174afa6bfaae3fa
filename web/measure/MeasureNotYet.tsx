/** Measure, until it is built: what it will be for, and the way back. */
import { writeAddress } from '../file/address.ts'
import './measure.css'

export function MeasureNotYet() {
  return (
    <section className="measure-not-yet" aria-labelledby="measure-title">
      <h2 id="measure-title">Measure is not built yet</h2>
      <p>
        Here you will enter readings from a real bench, volts, amperes, turns and temperatures with the
        accuracy of the meter, and see whether they agree with the model.
      </p>
      <a className="button" href={writeAddress('demonstrate')}>
        Back to Demonstrate
      </a>
    </section>
  )
}
