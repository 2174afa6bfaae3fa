/** A figure that fails says so in its own place, and the rest of the page runs on. */
import { Component, type ReactNode } from 'react'

interface FigureBoundaryProps {
  readonly children: ReactNode
}

interface Failure {
  readonly error: Error | null
  readonly copied: boolean
}

export class FigureBoundary extends Component<FigureBoundaryProps, Failure> {
  override state: Failure = { error: null, copied: false }

  static getDerivedStateFromError(thrown: unknown): Failure {
    return { error: thrown instanceof Error ? thrown : new Error(String(thrown)), copied: false }
  }

  override render(): ReactNode {
    const { error, copied } = this.state
    if (!error) return this.props.children
    const copy = async () => {
      await navigator.clipboard.writeText(`${error.message}\n${error.stack ?? ''}`)
      this.setState({ copied: true })
    }
    return (
      <div className="figure-failed" role="alert">
        <h2>This figure could not be drawn</h2>
        <p>
          Everything else runs on, and the bench is kept. If trying again does not help, load the page anew: a
          part of it may not have been fetched.
        </p>
        <p className="figure-failed-actions">
          <button
            type="button"
            className="button"
            onClick={() => this.setState({ error: null, copied: false })}
          >
            Try again
          </button>
          <button type="button" className="button" onClick={() => location.reload()}>
            Load anew
          </button>
          <button type="button" className="button" onClick={() => void copy().catch(() => undefined)}>
            {copied ? 'Details copied' : 'Copy details'}
          </button>
        </p>
      </div>
    )
  }
}
