/** How worm and wheel are shaped, as rows of the report. */

/** Most triangles of worm and two wheels at each level of detail. */
const MOST_TRIANGLES = { distant: 20_000, display: 60_000, print: 481_000 }

const micrometres = (length) => `${(1000 * length).toFixed(1)} um`

function cutRows({ times, cuts }) {
  const { wheel } = times.find(({ detail }) => detail === 'display')
  const faster = (what, time, least) => {
    const ratio = time / wheel
    return { what, value: `${ratio.toFixed(0)} x faster`, goal: `at least ${least} x`, met: ratio >= least }
  }
  return [
    faster('wheel against a general cut of all of it', cuts.whole, 1000),
    faster('wheel against one space cut and copied', cuts.copied, 30),
  ]
}

function cutNotes({ times, cuts }) {
  const { wheel } = times.find(({ detail }) => detail === 'display')
  const { steps, time, flank, most, least } = cuts.fine
  return [
    `wheel: ${wheel.toFixed(2)} ms against ${cuts.whole.toFixed(0)} ms for all of it, ${cuts.copied.toFixed(0)} ms for one space cut and copied`,
    `  off the exact flank at most ${micrometres(cuts.displayFlank)} against ${micrometres(cuts.cutFlank)} at ${cuts.steps} steps a pitch, ${cuts.cutTriangles} triangles`,
    `  three pitches cut at ${steps} steps a pitch: ${time.toFixed(0)} ms, ${micrometres(flank)} left on the flank, ${micrometres(most)} with fillet, least ${micrometres(least)}`,
  ]
}

/** Rows and notes for the report. */
export function shapeRows(figures) {
  const { times, sizes, drags, weld, rebuilds, growth } = figures
  const rows = [
    ...cutRows(figures),
    {
      what: 'worm and wheel anew in a worker, 95 of 100',
      value: `${drags.most.toFixed(1)} ms`,
      goal: 'at most 16 ms',
      met: drags.most <= 16,
    },
    {
      what: `held after ${rebuilds} times anew`,
      value: `${(growth / 1000).toFixed(0)} kB`,
      goal: 'at most 500 kB',
      met: growth <= 500_000,
    },
    ...sizes.map(({ detail, triangles }) => ({
      what: `triangles, ${detail}`,
      value: String(triangles),
      goal: `at most ${MOST_TRIANGLES[detail]}`,
      met: triangles <= MOST_TRIANGLES[detail],
    })),
  ]
  const notes = [
    ...cutNotes(figures),
    `worm and wheel anew in a worker: median ${drags.median.toFixed(1)} ms, the very first ${drags.first.toFixed(0)} ms`,
    ...sizes.map(({ detail, bytes }) => `  ${detail}: ${(bytes / 1000).toFixed(0)} kB of worm and wheel`),
    ...times.map(
      ({ detail, wheelFirst, wheel, wormFirst, worm }) =>
        `  ${detail}: wheel ${wheel.toFixed(2)} ms (first ${wheelFirst.toFixed(0)}), worm ${worm.toFixed(2)} ms (first ${wormFirst.toFixed(0)})`,
    ),
    `  wheel of a print welded: ${weld.toFixed(1)} ms`,
  ]
  return { rows, notes }
}
