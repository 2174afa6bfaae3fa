/**
 * Run by itself with --expose-gc: measures how worm and wheel are shaped, and prints the figures as one line
 * of JSON. Times in ms.
 */
import { isMainThread, parentPort, Worker } from 'node:worker_threads'
import { fileURLToPath } from 'node:url'
import bootCleaner from '../../assets/machines/boot-cleaner.json' with { type: 'json' }
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { Detail } from '../../sim/shape/detail.ts'
import type { TriangleMesh } from '../../sim/shape/triangle-mesh.ts'
import { weldedMesh } from '../../sim/shape/welded-mesh.ts'
import { wheelMesh } from '../../sim/shape/wheel-mesh.ts'
import { wormMesh } from '../../sim/shape/worm-mesh.ts'
import { COARSE, cutAndCopied, cutPiece, cutWheel, startCutting } from '../sim/shape/cut-by-worm.ts'
import { leftOver } from '../sim/shape/cut-deviation.ts'
import { wheelDeviations } from '../sim/shape/deviation.ts'
import { seededDrags } from './drags.ts'
import { part, timed } from './times.ts'

const DRAGS = 200
/** Drags that bring the compiler in, as opening the page does */
const FIRST_DRAGS = 12
const REBUILDS = 10_000
const WARM_UP = 50
/** Steps a pitch at which the cut comes as near to the exact flank as the display wheel does. */
const EQUAL_STEPS = 4
const FINEST_STEPS = 16

const machine = bootCleaner as Machine
const gearing: GearNumbers = { ...machine.gearing, backlash: 0 }

const bytesOf = ({ positions, normals, indices }: TriangleMesh): number =>
  positions.byteLength + normals.byteLength + indices.byteLength

/** The first mesh of a process, and what it costs once the compiler has seen it. */
function meshTimes(detail: Detail) {
  const runs = (mesh: typeof wheelMesh) =>
    Array.from({ length: WARM_UP }, () => timed(() => mesh(gearing, detail)).time)
  const wheel = runs(wheelMesh)
  const worm = runs(wormMesh)
  const warm = (times: readonly number[]) => part(times.slice(WARM_UP / 2), 0.5)
  return { detail, wheelFirst: wheel[0]!, wheel: warm(wheel), wormFirst: worm[0]!, worm: warm(worm) }
}

function meshSizes(detail: Detail) {
  const wheel = wheelMesh(gearing, detail)
  const worm = wormMesh(gearing, detail)
  return {
    detail,
    triangles: [worm, wheel, wheel].reduce((sum, { indices }) => sum + indices.length / 3, 0),
    // Both wheels share one mesh.
    bytes: bytesOf(worm) + bytesOf(wheel),
  }
}

/** A drag as the page does it: the numbers go to a worker, worm and wheel come back. */
async function dragTimes() {
  const worker = new Worker(fileURLToPath(import.meta.url))
  const answer = (drag: GearNumbers) =>
    new Promise<number>((resolve, reject) => {
      const started = performance.now()
      worker.once('message', () => resolve(performance.now() - started))
      worker.once('error', reject)
      worker.postMessage(drag)
    })
  const times: number[] = []
  for (const drag of seededDrags(gearing, FIRST_DRAGS + DRAGS)) times.push(await answer(drag))
  await worker.terminate()
  const later = times.slice(FIRST_DRAGS)
  return { first: times[0]!, median: part(later, 0.5), most: part(later, 0.95) }
}

function answerDrags() {
  parentPort!.on('message', (drag: GearNumbers) => {
    const meshes = [wormMesh(drag, 'display'), wheelMesh(drag, 'display')]
    const buffers = meshes.flatMap(({ positions, normals, indices }) =>
      [positions, normals, indices].map(({ buffer }) => buffer as ArrayBuffer),
    )
    parentPort!.postMessage(meshes, buffers)
  })
}

const held = (): number => {
  globalThis.gc!()
  globalThis.gc!()
  const { heapUsed, arrayBuffers } = process.memoryUsage()
  return heapUsed + arrayBuffers
}

/** Bytes held after so many rebuilds, less those before them. */
function growth(): number {
  const drags = seededDrags(gearing, DRAGS)
  const rebuild = (count: number) => {
    for (let n = 0; n < count; n++) {
      wormMesh(drags[n % DRAGS]!, 'display')
      wheelMesh(drags[n % DRAGS]!, 'display')
    }
  }
  rebuild(DRAGS)
  const before = held()
  rebuild(REBUILDS)
  return held() - before
}

/** The whole wheel by a general solid kernel, and the cheapest honest use of one: one space cut and copied. */
async function cuts() {
  const cutting = await startCutting(gearing, COARSE)
  const whole = timed(() => cutWheel(cutting, gearing.wheelTeeth, EQUAL_STEPS))
  const copied = timed(() => cutAndCopied(cutting, gearing.wheelTeeth, EQUAL_STEPS))
  const finest = await startCutting(gearing)
  const fine = timed(() => cutPiece(finest, 3, FINEST_STEPS))
  return {
    steps: EQUAL_STEPS,
    whole: whole.time,
    copied: copied.time,
    cutFlank: leftOver(cutting, whole.result).flank,
    cutTriangles: whole.result.numTri(),
    displayFlank: wheelDeviations(gearing, 'display').flankMost,
    fine: { steps: FINEST_STEPS, time: fine.time, ...leftOver(finest, fine.result) },
  }
}

function weldTime() {
  const wheel = wheelMesh(gearing, 'print')
  return part(
    Array.from({ length: WARM_UP / 5 }, () => timed(() => weldedMesh(wheel)).time),
    0.5,
  )
}

async function figures() {
  const times = (['display', 'print', 'distant'] as const).map(meshTimes)
  const sizes = (['distant', 'display', 'print'] as const).map(meshSizes)
  const drags = await dragTimes()
  return { times, sizes, drags, weld: weldTime(), rebuilds: REBUILDS, growth: growth(), cuts: await cuts() }
}

if (isMainThread) console.log(JSON.stringify(await figures()))
else answerDrags()
