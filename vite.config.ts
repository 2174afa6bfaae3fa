import react from '@vitejs/plugin-react'
import type { Plugin } from 'vite'
import { defineConfig } from 'vitest/config'

/** Lets the browser fetch the stage beside the page's own script, which asks for it first thing. */
const fetchStageEarly: Plugin = {
  name: 'fetch-stage-early',
  transformIndexHtml: {
    order: 'post',
    handler: (_html, { bundle }) =>
      Object.values(bundle ?? {})
        .filter((file) => file.type === 'chunk' && file.name === 'Stage')
        .map(({ fileName }) => ({
          tag: 'link',
          attrs: { rel: 'modulepreload', href: `./${fileName}`, crossorigin: true },
        })),
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
    chunkSizeWarningLimit: 900,
  },
  test: {
    root: '.',
    include: ['tests/{published,property,sim,web,lint}/**/*.test.{ts,tsx}'],
    environment: 'node',
    testTimeout: 60_000,
  },
})
