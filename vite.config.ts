import react from '@vitejs/plugin-react'
import type { Plugin, Rolldown } from 'vite'
import { defineConfig } from 'vitest/config'

/** File names of some chunks and of every chunk that has to be there before one of them runs. */
function withImports(chunks: readonly Rolldown.OutputChunk[], wanted: readonly string[]): Set<string> {
  const found = new Set(wanted)
  for (const fileName of found) {
    const chunk = chunks.find((each) => each.fileName === fileName)
    for (const needed of chunk?.imports ?? []) found.add(needed)
  }
  return found
}

/**
 * Lets the browser fetch the stage, and all that it is made of, beside the page's own script, which asks for it first
 * thing.
 */
const fetchStageEarly: Plugin = {
  name: 'fetch-stage-early',
  transformIndexHtml: {
    order: 'post',
    handler: (_html, { bundle }) => {
      const chunks = Object.values(bundle ?? {}).filter((file) => file.type === 'chunk')
      const namesOf = (which: (chunk: Rolldown.OutputChunk) => boolean) =>
        chunks.filter(which).map(({ fileName }) => fileName)
      const asked = withImports(
        chunks,
        namesOf(({ isEntry }) => isEntry),
      )
      const stage = withImports(
        chunks,
        namesOf(({ name }) => name === 'Stage'),
      )
      return [...stage]
        .filter((each) => !asked.has(each))
        .map((fileName) => ({
          tag: 'link',
          injectTo: 'head',
          attrs: { rel: 'modulepreload', href: `./${fileName}`, crossorigin: true },
        }))
    },
  },
}

export default defineConfig({
  root: 'web',
  base: './',
  publicDir: false,
  plugins: [react(), fetchStageEarly],
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    // every browser of that age fetches ahead by itself, or does without
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 900,
  },
  test: {
    root: '.',
    include: ['tests/{published,property,sim,web,lint}/**/*.test.{ts,tsx}'],
    environment: 'node',
    testTimeout: 60_000,
  },
})
