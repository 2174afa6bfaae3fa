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
    handler: (_html, { bundle, path }) => {
      // the presenter window has no stage
      if (path !== '/index.html') return []
      const chunks = Object.values(bundle ?? {}).filter((file) => file.type === 'chunk')
      const namesOf = (which: (chunk: Rolldown.OutputChunk) => boolean) =>
        chunks.filter(which).map(({ fileName }) => fileName)
      const asked = withImports(
        chunks,
        namesOf(({ isEntry, name }) => isEntry && name === 'index'),
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

/** Of three's shaders: materials, coats, glass and surroundings in textures, none of which is used here. */
const UNUSED_SHADERS =
  /^(mesh(lambert|phong|toon|matcap|normal)|lights_(lambert|phong|toon)|points|sprite|linedashed|equirect|background|transmission|iridescence|clearcoat|cube|envmap)/

/** Shaders stand in one table, which no bundler can look into. */
const leaveOutShaders: Plugin = {
  name: 'leave-out-shaders',
  apply: 'build',
  transform(code, id) {
    if (!id.endsWith('/three/build/three.module.js')) return null
    const table = /const ShaderChunk = \{(.*?)\n\};/s.exec(code)?.[1] ?? ''
    const unused = [...table.matchAll(/(\w+): ([\w$]+)/g)].filter(([, name]) => UNUSED_SHADERS.test(name!))
    if (unused.length === 0) throw new Error('the table of shaders is not where it was in three')
    return unused.reduce((left, [, , variable]) => {
      const line = new RegExp(`^(?:var|const) ${variable!.replace('$', '\\$')} = ".*";$`, 'm')
      if (!line.test(left)) throw new Error(`the shader ${variable} is not where it was in three`)
      return left.replace(line, () => `const ${variable} = '';`)
    }, code)
  },
}

/** Styles of the first picture: in one file they weigh less than cut in two by what the presenter window shares. */
const FIRST_LOOK =
  /web\/(style|bar\/bar|demonstrate\/demonstrate|file\/drop|instrument\/(counting|plan)|measure\/measure|panel\/(panel|print))\.css$/

/** What the first picture needs and much that comes later too: so small that each in a file of its own weighs double. */
const SMALL_AND_EARLY =
  /sim\/(drive\/turns|gear\/(crossing|efficiency|last-place|proportions|rim|wheel-motion)|pose\/electric-chain|quantity\/convert)\.ts$|node_modules\/zustand\//

export default defineConfig({
  root: 'web',
  base: './',
  publicDir: false,
  plugins: [react(), leaveOutShaders, fetchStageEarly],
  build: {
    outDir: '../dist',
    rolldownOptions: {
      input: ['web/index.html', 'web/presenter.html'],
      output: {
        codeSplitting: {
          groups: [
            { name: 'look', test: FIRST_LOOK },
            { name: 'early', test: SMALL_AND_EARLY },
          ],
        },
      },
    },
    emptyOutDir: true,
    target: 'es2022',
    modulePreload: {
      // every browser of that age fetches ahead by itself, or does without
      polyfill: false,
      // what comes later comes while the page is idle; lists of what it needs in turn would weigh on the first load
      resolveDependencies: (_file, needed, { hostType }) =>
        hostType === 'html' ? needed : needed.filter((each) => each.endsWith('.css')),
    },
    chunkSizeWarningLimit: 900,
  },
  test: {
    root: '.',
    include: ['tests/{published,property,sim,web,lint}/**/*.test.{ts,tsx}'],
    environment: 'node',
    // Far beyond what any test takes: a slow or busy machine must not fail one.
    testTimeout: 300_000,
    maxWorkers: 2,
  },
})
