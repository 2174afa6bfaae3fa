/** How fast the drive is computed, as rows of the report. */

/** What a frame may spend in the drive [ms], and what a hundred thousand steps may leave on the heap [bytes] */
const FRAME = 0.2
const GARBAGE = 512_000
/** How many times less than its own time the longest computation takes */
const HEATING = 50_000
const FASTER = { odex: 3, mathjs: 400, bridge: 5 }

const time = (ms) => (ms < 0.1 ? `${(1000 * ms).toFixed(1)} us` : `${ms.toFixed(ms < 10 ? 2 : 0)} ms`)
const atMost = (what, ms, goal) => ({
  what,
  value: time(ms),
  goal: `at most ${time(goal)}`,
  met: ms <= goal,
})

const timeRows = ({ times }) =>
  times.flatMap(({ what, goal, typical, covers }) => {
    const own = atMost(what, typical, goal)
    if (covers === undefined) return [own]
    const part = (1000 * covers) / typical
    return [
      own,
      {
        what: `${what}, of its own time`,
        value: `1/${Math.floor(part)}`,
        goal: `at most 1/${HEATING}`,
        met: part >= HEATING,
      },
    ]
  })

const frameRows = ({ frames }) =>
  frames.flatMap(({ what, most, garbage }) => [
    atMost(`a frame of the drive, 99 of 100, ${what}`, most, FRAME),
    {
      what: `left on the heap by 100 000 steps, ${what}`,
      value: `${(garbage / 1000).toFixed(0)} kB`,
      goal: `at most ${GARBAGE / 1000} kB`,
      met: garbage <= GARBAGE,
    },
  ])

const nearness = ({ miss }) => miss.toExponential(1)

function ratioRow(what, { ours, [what.peer]: peer }, goal) {
  const ratio = peer.time / ours.time
  const fair = peer.miss <= ours.miss ? '' : ', which it does not reach'
  return {
    what: `${what.start} to ${nearness(ours)} against ${what.peer}${fair}`,
    value: `${ratio.toFixed(ratio < 10 ? 1 : 0)} x faster`,
    goal: `at least ${goal} x`,
    met: ratio >= goal,
  }
}

const peerRows = ({ smooth, bridge }) => [
  ...smooth.pairs.flatMap((pair) =>
    ['odex', 'mathjs'].map((peer) => ratioRow({ start: 'smooth start', peer }, pair, FASTER[peer])),
  ),
  ...bridge.pairs.map((pair) =>
    ratioRow({ start: 'start behind a bridge', peer: 'odex' }, pair, FASTER.bridge),
  ),
]

const told = (name, { miss, time: ms, tolerance }) =>
  `${name} ${time(ms)} at ${miss.toExponential(1)} (tolerance ${tolerance.toExponential(0)})`

function peerNotes({ smooth, bridge }) {
  return [
    ...smooth.pairs.map(
      ({ ours, odex, mathjs }) =>
        `smooth start: ${told('own', ours)}, ${told('odex', odex)}, ${told('mathjs', mathjs)}`,
    ),
    `  own at its tightest is ${smooth.ownTight.toExponential(1)} off odex at 1e-14`,
    ...bridge.pairs.map(
      ({ ours, odex }) => `start behind a bridge: ${told('own with events', ours)}, ${told('odex', odex)}`,
    ),
    `  without events, blocked currents dying away: ${told('odex at its best', bridge.odexNearest)}`,
  ]
}

const frameNotes = ({ frames }) =>
  frames.map(
    ({ what, median, longest, firstLongest, firstLate }) =>
      `a frame of the drive, ${what}: median ${time(median)}, longest ${time(longest)}, while all was new ${time(firstLongest)}, ${firstLate} of them late for the screen`,
  )

const timeNotes = ({ times }) =>
  times.map(({ what, first, typical }) => `  ${what}: ${time(typical)}, the very first ${time(first)}`)

/** Rows and notes for the report. */
export const driveRows = (figures) => ({
  rows: [...frameRows(figures), ...timeRows(figures), ...peerRows(figures)],
  notes: [...frameNotes(figures), ...timeNotes(figures), ...peerNotes(figures)],
})
