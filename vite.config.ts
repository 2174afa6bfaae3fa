import react from '@vitejs/plugin-react'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: 'web',
  base: './',
  publicDir: false,
  plugins: [react()],
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
