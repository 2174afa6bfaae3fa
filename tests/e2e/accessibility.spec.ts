import { AxeBuilder } from '@axe-core/playwright'
import { expect, test } from '@playwright/test'
import { goTo, open } from './support/app.ts'

const WAYS = ['Demonstrate', 'Predict', 'Measure', 'Design'] as const
const THEMES = ['light', 'dark'] as const
const SIZES = [
  { name: 'desktop', width: 1440, height: 900 },
  { name: 'phone', width: 390, height: 844 },
] as const

for (const theme of THEMES) {
  for (const { name, width, height } of SIZES) {
    for (const way of WAYS) {
      test(`${way} has no accessibility violation, ${theme}, ${name}`, async ({ page }) => {
        await page.setViewportSize({ width, height })
        await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' })
        await page.addInitScript((chosen) => localStorage.setItem('counterturn.theme', chosen), theme)
        await open(page)
        await goTo(page, way)
        const { violations } = await new AxeBuilder({ page }).analyze()
        const found = violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html}`))
        expect(found).toEqual([])
      })
    }
  }
}
