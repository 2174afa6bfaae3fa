import { renderToString } from 'react-dom/server'
import { expect, test } from 'vitest'
import { FigureBoundary } from '../../web/panel/FigureBoundary.tsx'

test('a figure that fails is told in words, and what was thrown is kept whatever it is', () => {
  for (const thrown of [new Error('no such chunk'), 'text', null]) {
    const state = FigureBoundary.getDerivedStateFromError(thrown)
    const boundary = new FigureBoundary({ children: 'the figure' })
    boundary.state = state
    const shown = renderToString(boundary.render())
    expect(shown).toContain('This figure could not be drawn')
    expect(shown).toContain('Try again')
    expect(state.error).toBeInstanceOf(Error)
  }
})

test('a figure that does not fail is shown as it is', () => {
  expect(new FigureBoundary({ children: 'the figure' }).render()).toBe('the figure')
})
