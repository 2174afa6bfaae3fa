import { defineConfig } from '@playwright/test'
import { BROWSER_FLAGS } from '../support/browser.mjs'

const MINUTE = 60_000

/** One worker: software rendering keeps both cores of a small machine busy by itself. */
export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results',
  globalSetup: './support/setup.mjs',
  fullyParallel: false,
  forbidOnly: true,
  workers: 1,
  retries: 0,
  timeout: 2 * MINUTE,
  globalTimeout: 40 * MINUTE,
  expect: { timeout: 20_000 },
  reporter: [['list']],
  use: {
    baseURL: process.env['COUNTERTURN_ADDRESS'] ?? '',
    viewport: { width: 1440, height: 900 },
    deviceScaleFactor: 1,
    locale: 'en-GB',
    timezoneId: 'UTC',
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: process.env['COUNTERTURN_BROWSER'] ?? '',
      args: BROWSER_FLAGS,
    },
  },
})
