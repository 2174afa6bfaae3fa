/** Run by itself with --expose-gc: measures the drive, and prints the figures as one line of JSON. Times in ms. */
import { frameFigures } from './drive-frames.ts'
import { bridgeStart, smoothStart } from './drive-peers.ts'
import { driveTimes } from './drive-times.ts'

// What is compared with others comes first, then frames: the compiler has seen of the drive only what they ask of it.
const smooth = smoothStart()
const frames = frameFigures()
console.log(JSON.stringify({ smooth, frames, bridge: bridgeStart(), times: driveTimes() }))
