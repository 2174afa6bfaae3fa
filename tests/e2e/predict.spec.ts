/** Predict by keyboard, on a desk and on a phone; and that no phase before the comparison gives an answer away. */
import { AxeBuilder } from '@axe-core/playwright'
import { type Page, expect, test } from '@playwright/test'
import { BANK, FAMILIES } from '../../sim/question/bank.ts'
import { questionFor } from '../../sim/question/instance.ts'
import type { Question } from '../../sim/question/question.ts'
import { PACES } from '../../web/store/bench.ts'
import { advance, open } from './support/app.ts'

const SEED = 'leak'

/** A set of one question, as a link holds it that is not packed yet. */
const setLink = (items: readonly object[]): string => {
  const asked = { bank: BANK, seed: SEED, items, at: 0 }
  const link = JSON.stringify({ v: 3, base: 'boot-cleaner', set: { way: 'predict', asked } })
  return `?quality=low#/predict?s=${encodeURIComponent(link)}`
}

const sheet = (page: Page) => page.getByRole('complementary', { name: 'Prediction sheet' })
const heading = (page: Page, name: string | RegExp) => sheet(page).getByRole('heading', { name })

/** Goes on by Tab until the focus stands on what is wanted, as somebody without a mouse does. */
async function tabTo(page: Page, name: string | RegExp, most = 60): Promise<void> {
  for (let i = 0; i < most; i++) {
    await page.keyboard.press('Tab')
    const focused = page.locator(':focus')
    const label = await focused.evaluate(
      (element) =>
        element.getAttribute('aria-label') ?? element.closest('label')?.textContent ?? element.textContent,
    )
    if (label !== null && (typeof name === 'string' ? label.trim() === name : name.test(label.trim()))) return
  }
  throw new Error(`Tab does not lead to ${String(name)}`)
}

test('by keyboard alone: answer, how sure, commit, count, compare, watch, next', async ({ page }) => {
  await open(page, '?quality=low#/predict')
  const number = sheet(page).getByRole('textbox')
  await number.focus()
  await page.keyboard.type('12')
  await page.keyboard.press('Enter')
  await expect(sheet(page).getByRole('radio', { name: /^1/ })).toBeFocused()
  await page.keyboard.press('ArrowRight')
  await expect(sheet(page).getByRole('radio', { name: /^2/ })).toBeChecked()
  await expect(heading(page, /How many turns/)).toBeVisible()
  await tabTo(page, 'Commit prediction')
  await page.keyboard.press('Enter')
  await expect(heading(page, 'Count the turns of the worm')).toBeFocused()
  await tabTo(page, 'Turn to the end')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: /^Mark passed/ })).toBeFocused()
  for (let i = 0; i < 3; i++) await page.keyboard.press('Space')
  await advance(page, 60)
  await expect(page.getByRole('button', { name: 'Compare', exact: true })).toBeVisible()
  const left = page.getByRole('status', { name: 'Left wheel turns', exact: true })
  await expect(left).toHaveText('hidden')
  await tabTo(page, 'Compare')
  await page.keyboard.press('Enter')
  await expect(heading(page, '20 turns. You said 12 turns.')).toBeFocused()
  await expect(left).toHaveText('1 turn')
  await expect(sheet(page).getByRole('row', { name: /Counted by you/ })).toContainText('3')
  await expect(page.getByRole('button', { name: 'Commit prediction' })).toHaveCount(0)
  await tabTo(page, /^Watch it$/)
  await page.keyboard.press('Enter')
  // from its start, where the first look may come late
  await expect(left).toHaveText(/^0(\.\d+)? turns$/)
  await tabTo(page, 'Next question')
  await page.keyboard.press('Enter')
  await expect(heading(page, /How do the two wheels turn/)).toBeFocused()
  await expect(left).toHaveText('hidden')
  await expect(page.getByRole('log', { name: 'What has turned' })).toHaveText('')
})

test('on a phone one thing at a time, the stage in sight while it is counted', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await open(page, '?quality=low#/predict')
  await sheet(page).getByRole('textbox').fill('20')
  await expect(sheet(page).getByRole('radio')).toHaveCount(0)
  await page.getByRole('button', { name: 'How sure?' }).click()
  await expect(sheet(page).getByRole('radio', { name: /^1/ })).toBeFocused()
  const commit = page.getByRole('button', { name: 'Commit prediction' })
  const { y, height } = (await commit.boundingBox())!
  expect(height).toBeGreaterThanOrEqual(56)
  expect(y).toBeGreaterThan(844 / 2)
  expect(y + height).toBeLessThanOrEqual(844)
  await commit.press('Enter')
  await expect(heading(page, 'Count the turns of the worm')).toBeFocused()
  for (const seen of [
    page.getByRole('region', { name: 'Stage', exact: true }),
    page.getByRole('button', { name: 'Mark passed' }),
  ])
    await expect(seen).toBeInViewport({ ratio: 0.95 })
  const stage = page.getByRole('region', { name: 'Stage', exact: true })
  await stage.click()
  await stage.click()
  await page.getByRole('button', { name: 'Take back the last one' }).click()
  await page.getByRole('button', { name: 'Compare now' }).click()
  await expect(heading(page, /^20 turns/)).toBeFocused()
  await expect(sheet(page).getByRole('row', { name: /Counted by you/ })).toHaveText(/1$/)
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390)
})

test('an answer that does not read, or is missing, is never committed', async ({ page }) => {
  await open(page, '?quality=low#/predict')
  const commit = page.getByRole('button', { name: 'Commit prediction' })
  const number = sheet(page).getByRole('textbox')
  await commit.click()
  await expect(number).toBeFocused()
  await number.fill('three apples')
  await commit.click()
  await expect(number).toHaveValue('three apples')
  await expect(number).toHaveAttribute('aria-invalid', 'true')
  await expect(commit).toBeVisible()
})

test('with reduced motion the turn goes by quarters and ends at the same place', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await open(page, setLink([{ family: 'pair-sense', index: 0, level: 1 }]))
  await page.getByRole('button', { name: 'Skip the prediction' }).click()
  await page.getByRole('button', { name: 'Turn to the end' }).click()
  await page.getByRole('button', { name: 'Compare', exact: true }).click()
  await expect(page.getByRole('status', { name: 'Worm turns', exact: true })).toHaveText(/0\.25 turns/)
})

test('the own machine comes back, and a reload in the middle keeps it and asks again', async ({ page }) => {
  await open(page)
  await page.getByRole('button', { name: 'One tooth more' }).click()
  await page.getByRole('button', { name: 'One tooth more' }).click()
  await page.getByRole('link', { name: 'Predict', exact: true }).click()
  await expect(heading(page, /22 teeth/)).toBeVisible()
  await page.getByRole('button', { name: 'This machine' }).click()
  await page.getByRole('button', { name: /^Practice/ }).click()
  await expect(heading(page, /22 teeth/)).toHaveCount(0)
  const question = await sheet(page).getByRole('heading').textContent()
  await page.reload()
  await page.waitForFunction(() => Reflect.has(window, 'counterturn'))
  await expect(sheet(page).getByRole('heading')).toHaveText(question!)
  await page.getByRole('link', { name: 'Demonstrate', exact: true }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('22')
})

test('a reload finds what was typed, and what was committed is still committed', async ({ page }) => {
  await open(page, '?quality=low#/predict')
  const again = async () => {
    await page.reload()
    await page.waitForFunction(() => Reflect.has(window, 'counterturn'))
  }
  await sheet(page).getByRole('textbox').fill('12')
  await sheet(page).getByRole('radio', { name: /^2/ }).check()
  await again()
  await expect(sheet(page).getByRole('textbox')).toHaveValue('12')
  await expect(sheet(page).getByRole('radio', { name: /^2/ })).toBeChecked()
  await page.getByRole('button', { name: 'Commit prediction' }).click()
  await again()
  await expect(heading(page, 'Count the turns of the worm')).toBeVisible()
  await page.getByRole('button', { name: 'Compare now' }).click()
  await again()
  await expect(heading(page, '20 turns. You said 12 turns.')).toBeVisible()
  await page.getByRole('button', { name: 'Next question' }).click()
  await expect(heading(page, /How do the two wheels turn/)).toBeVisible()
})

test('a set of another version is told in words', async ({ page }) => {
  const asked = { bank: 99, seed: 'x', items: [{ family: 'turns-worm', index: 0, level: 1 }], at: 0 }
  const link = JSON.stringify({ v: 3, base: 'boot-cleaner', set: { way: 'predict', asked } })
  await open(page, `?quality=low#/predict?s=${encodeURIComponent(link)}`)
  await expect(sheet(page)).toContainText('version 99')
  await page.getByRole('button', { name: 'Practise instead' }).click()
  await expect(page.getByRole('button', { name: 'Commit prediction' })).toBeVisible()
})

const numbersIn = (text: string): readonly string[] => text.match(/\d+(?:\.\d+)?/g) ?? []

/** Steps, scale and paces, which the page shows whatever is asked */
const ALWAYS_SHOWN = [0, 1, 2, 3, 4, 5, ...PACES].map(String)

const figureOf = (value: number): string => String(Number(value.toPrecision(5)))

/** A question with a count whose answer is none of the numbers that the page shows anyway. */
function telling(family: string): Question | null {
  for (let index = 0; index < 300; index++) {
    const level = ([1, 2, 3] as const)[index % 3]!
    const question = questionFor({ bank: BANK, seed: SEED, family, index, level })!
    if (!question.trial) continue
    const { ask } = question
    const shown = [...numbersIn(`${question.text} ${question.trial.words}`), ...ALWAYS_SHOWN]
    if (ask.kind !== 'number' || !shown.includes(figureOf(ask.answer))) return question
  }
  return null
}

/** All that the page tells: text, names, titles, values, the address. */
const told = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const parts = [document.body.innerText, document.title, location.href]
    for (const element of document.body.querySelectorAll('*')) {
      for (const { name, value } of element.attributes)
        if (/^(?:aria-|title|alt|placeholder|value)/.test(name)) parts.push(value)
      if (element instanceof HTMLOutputElement || element instanceof HTMLInputElement)
        parts.push(element.value)
      if (element.closest('.unseen')) parts.push(element.textContent)
    }
    return parts.join(' ')
  })

const COUNTED = ['turns-worm', 'turns-wheel', 'turns-angle', 'teeth-passed', 'wheel-sense', 'pair-sense']

const SENSES = /clockwise/

test('until the comparison no phase of any counted question tells its answer', async ({ page }) => {
  const questions = FAMILIES.flatMap(({ name }) => telling(name) ?? [])
  expect(questions.map(({ family }) => family)).toEqual(expect.arrayContaining(COUNTED))
  for (const question of questions) {
    const { ask, key, family } = question
    await page.goto('about:blank')
    await open(page, setLink([{ family, index: key!.index, level: key!.level }]))
    await expect(page.getByRole('button', { name: 'Skip the prediction' })).toBeVisible()
    const tells = async () => {
      const text = await told(page)
      if (ask.kind === 'number') return numbersIn(text).includes(figureOf(ask.answer))
      return SENSES.test(
        text.replaceAll(question.text, '').replaceAll(/(?:Clockwise|Both|Anticlockwise)[^.]*/g, ''),
      )
    }
    expect(await tells(), `${family}, predict`).toBe(false)
    await page.getByRole('button', { name: 'Skip the prediction' }).click()
    expect(await tells(), `${family}, count`).toBe(false)
    await page.getByRole('button', { name: 'Turn to the end' }).click()
    await advance(page, 1)
    await expect(page.getByRole('button', { name: 'Compare', exact: true })).toBeVisible()
    expect(await tells(), `${family}, after the turn`).toBe(false)
    await page.getByRole('button', { name: 'Compare', exact: true }).click()
    await expect(sheet(page).getByRole('table')).toBeVisible()
    const after = await told(page)
    expect(after, `${family}, compared`).toContain(question.working)
  }
})

async function faults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html}`))
}

for (const theme of ['light', 'dark'] as const) {
  for (const [width, height] of [
    [1440, 900],
    [390, 844],
  ] as const) {
    test(`no phase has an accessibility violation, ${theme}, ${width} wide`, async ({ page }) => {
      await page.setViewportSize({ width, height })
      await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' })
      const kinds = ['turns-worm', 'pair-sense', 'safe-order', 'torque-each']
      await open(page, setLink(kinds.map((family) => ({ family, index: 0, level: 1 }))))
      for (const kind of kinds) {
        expect(await faults(page), `${kind}, predict`).toEqual([])
        await page.getByRole('button', { name: 'Skip the prediction' }).click()
        const count = page.getByRole('button', { name: 'Compare now' })
        if (await count.isVisible()) {
          expect(await faults(page), `${kind}, count`).toEqual([])
          await count.click()
        }
        await page.getByRole('button', { name: 'Watch it' }).click()
        expect(await faults(page), `${kind}, compare`).toEqual([])
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width)
        const next = page.getByRole('button', { name: 'Next question' })
        if (await next.isVisible()) await next.click()
      }
    })
  }
}
