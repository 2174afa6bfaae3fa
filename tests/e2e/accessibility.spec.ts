import { AxeBuilder } from '@axe-core/playwright'
import { type Page, expect, test } from '@playwright/test'
import { goTo, open, openPanel } from './support/app.ts'

const WAYS = ['Demonstrate', 'Predict', 'Measure', 'Design'] as const
const THEMES = ['light', 'dark'] as const
const SIZES = [
  { name: 'desktop', width: 1440, height: 900 },
  { name: 'phone', width: 390, height: 844 },
] as const

const PANELS = [
  'Waves',
  'Torque',
  'Power',
  'Heat',
  'Brushes',
  'Contact',
  'Forces',
  'Timing',
  'Models',
] as const

async function faults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html}`))
}

async function openSized(page: Page, theme: 'light' | 'dark', width: number, height: number): Promise<void> {
  await page.setViewportSize({ width, height })
  await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' })
  await page.addInitScript((chosen) => localStorage.setItem('counterturn.theme', chosen), theme)
  await open(page)
}

for (const theme of THEMES) {
  for (const { name, width, height } of SIZES) {
    test(`no panel has an accessibility violation, ${theme}, ${name}`, async ({ page }) => {
      await openSized(page, theme, width, height)
      for (const panel of PANELS) {
        await openPanel(page, panel)
        expect(await faults(page)).toEqual([])
      }
    })
    for (const way of WAYS) {
      test(`${way} has no accessibility violation, ${theme}, ${name}`, async ({ page }) => {
        await openSized(page, theme, width, height)
        await goTo(page, way)
        expect(await faults(page)).toEqual([])
      })
    }
  }
}
