/** What stands here where the address names no stage. */
import './presenter.css'

export const NoStage = () => (
  <main className="presenter-alone">
    <h1>Presenter window</h1>
    <p>
      It belongs to a stage, and was opened without one. Open a lesson to lead a room, then press Presenter
      window there.
    </p>
    <p>
      <a className="button" href="./index.html">
        Open the stage
      </a>
    </p>
  </main>
)
