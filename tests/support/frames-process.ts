/** Builds a program of frames and runs it in a process of its own, where nothing else makes garbage. */
import { execFileSync } from 'node:child_process'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'

const file = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url))

/** The compiler works in the loop's own thread, so a busy computer optimises the same frames. */
const FLAGS = ['--expose-gc', '--no-concurrent-recompilation', '--no-concurrent-sparkplug']

/** `program` - its path from the root; `outDir` - where what is built goes */
export async function buildFrames(program: string, outDir: string): Promise<void> {
  const output = { entryFileNames: 'frames.mjs' }
  await build({
    configFile: false,
    logLevel: 'silent',
    build: { ssr: file(program), outDir, target: 'node20', rolldownOptions: { output } },
  })
}

/** What the built program prints first: garbage collections while its frames run, after warming up. */
export function collections(folder: string, machine: string, manner: string): number {
  const given = [join(folder, 'frames.mjs'), file(`assets/machines/${machine}.json`), manner]
  return Number.parseInt(execFileSync(process.execPath, [...FLAGS, ...given], { encoding: 'utf8' }), 10)
}
