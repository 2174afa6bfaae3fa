import { defineConfig } from '@playwright/test'
import { BROWSER_FLAGS } from '../support/browser.mjs'

const MINUTE = 60_000

/** Two workers: one draws by software while the other reads, types and checks. Nothing here depends on how fast. */
export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results',
  globalSetup: './support/setup.mjs',
  fullyParallel: false,
  forbidOnly: true,
  workers: 2,
  retries: 0,
  timeout: 5 * MINUTE,
  globalTimeout: 40 * MINUTE,
  expect: { timeout: 40_000 },
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
