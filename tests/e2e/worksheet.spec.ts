/** A worksheet from the choice to the paper and back to the screen. */
import { AxeBuilder } from '@axe-core/playwright'
import { type Page, expect, test } from '@playwright/test'
import jsQR from 'jsqr'
import { OPS, getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { BANK, familyNamed } from '../../sim/question/bank.ts'
import { questionFor } from '../../sim/question/instance.ts'
import type { Question } from '../../sim/question/question.ts'
import { valueText } from '../../sim/question/value-text.ts'
import { answerLines } from '../../web/worksheet/answer-lines.ts'
import { MARGIN, PAPERS } from '../../web/worksheet/paper.ts'
import type { Paper } from '../../web/worksheet/order.ts'
import { open } from './support/app.ts'

const POINTS_PER_MM = 72 / 25.4
const sheet = (page: Page) => page.getByRole('dialog', { name: 'Worksheet' })

async function openWorksheet(page: Page): Promise<void> {
  await open(page, '?quality=low#/predict')
  const column = page.getByRole('complementary', { name: 'Prediction sheet' })
  await column.getByRole('button', { name: 'This machine' }).click()
  await column.getByRole('button', { name: 'Worksheet' }).click()
  await expect(sheet(page).getByRole('region', { name: 'Preview' })).toBeVisible()
}

/** Nothing but these families, and the seed. */
async function choose(page: Page, families: readonly string[], seed: string): Promise<void> {
  const counts = sheet(page).getByRole('spinbutton')
  for (const count of await counts.all()) {
    const name = await count.evaluate((input) => input.closest('label')?.textContent ?? '')
    if (name !== 'Versions for a class') await count.fill('0')
  }
  for (const family of families)
    await sheet(page)
      .getByRole('spinbutton', { name: familyNamed(family)!.title, exact: true })
      .fill('1')
  await sheet(page).getByLabel('Seed').fill(seed)
}

const asked = (families: readonly string[], seed: string): Question[] =>
  families.map((family) => questionFor({ bank: BANK, seed, family, index: 0, level: 1 })!)

interface ReadPage {
  readonly words: string
  readonly width: number
  readonly height: number
  readonly paths: number
  readonly images: number
  /** Left and right ends of the text [mm] */
  readonly left: number
  readonly right: number
}

async function readPages(pdf: Uint8Array): Promise<ReadPage[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), useSystemFonts: true }).promise
  const pages: ReadPage[] = []
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number)
    const { items } = await page.getTextContent()
    const texts = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? item : []))
    const { fnArray } = await page.getOperatorList()
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view
    pages.push({
      words: items
        .map((item) => ('str' in item ? item.str + (item.hasEOL ? ' ' : '') : ''))
        .join('')
        .replace(/\s+/g, ' '),
      width: (right - left) / POINTS_PER_MM,
      height: (top - bottom) / POINTS_PER_MM,
      paths: fnArray.filter((each) => each === OPS.constructPath).length,
      images: fnArray.filter((each) => each === OPS.paintImageXObject || each === OPS.paintInlineImageXObject)
        .length,
      left: Math.min(...texts.map(({ transform }) => Number(transform[4]))) / POINTS_PER_MM,
      right: Math.max(...texts.map(({ transform, width }) => Number(transform[4]) + width)) / POINTS_PER_MM,
    })
  }
  await document.destroy()
  return pages
}

/** Prints into a file instead of a printer, while the sheets are there. */
async function printed(page: Page): Promise<ReadPage[]> {
  await page.evaluate(() => {
    window.print = () => undefined
  })
  await sheet(page).getByRole('button', { name: 'Print' }).click()
  await expect(page.locator('.worksheet-printed')).toBeAttached()
  const pages = await readPages(await page.pdf({ preferCSSPageSize: true }))
  await page.evaluate(() => dispatchEvent(new Event('afterprint')))
  await expect(page.locator('.worksheet-printed')).not.toBeAttached()
  return pages
}

/** As the words of a PDF come out: the places where a line ends are spaces. */
const inWords = (text: string): RegExp =>
  new RegExp(
    text
      .split(/\s+/)
      .map((word) => word.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`))
      .join(String.raw`\s*`),
  )

const FAMILIES_ASKED = ['turns-worm', 'turns-wheel', 'pair-sense', 'torque-each', 'supply-peak', 'safe-order']

for (const paper of ['a4', 'letter'] satisfies Paper[]) {
  test(`${paper}: questions in order, answers on their own pages and those of the core`, async ({ page }) => {
    await openWorksheet(page)
    await choose(page, FAMILIES_ASKED, 'paper')
    await sheet(page)
      .getByLabel(paper === 'a4' ? 'A4' : 'Letter')
      .check()
    await sheet(page).getByLabel('Answers, on pages of their own').check()
    const pages = await printed(page)
    const questions = asked(FAMILIES_ASKED, 'paper')
    const answers = pages.filter(({ words }) => words.includes('Answers, for the teacher'))
    const before = pages.slice(0, pages.length - answers.length)
    expect(answers.length).toBeGreaterThan(0)
    expect(before.every(({ words }) => !words.includes('Answers, for the teacher'))).toBe(true)

    before.forEach(({ words }, i) => {
      expect(words).toContain(`Page ${i + 1} of ${before.length}`)
      expect(words).toContain('Seed paper')
    })
    const sheetWords = before.map(({ words }) => words).join(' ')
    const answerWords = answers.map(({ words }) => words).join(' ')
    for (const question of questions) {
      expect(sheetWords).toMatch(inWords(question.text))
      expect(answerWords).toMatch(inWords(question.text))
      expect(answerWords).toMatch(inWords(`Answer: ${answerLines(question).answer}`))
      expect(sheetWords).not.toMatch(inWords(`Answer: ${answerLines(question).answer}`))
      for (const { sentence } of question.ask.kind === 'words' ? [] : question.ask.slips) {
        expect(answerWords).toMatch(inWords(sentence))
        expect(sheetWords).not.toMatch(inWords(sentence))
      }
    }
    // turns-worm by hand: wheel turns times teeth over starts
    const { z1, z2, N } = questions[0]!.given as { z1: number; z2: number; N: number }
    expect(answerWords).toMatch(inWords(`Answer: ${valueText((N * z2) / z1, 'turn')}`))

    const code = /Sheet code ([\dA-Z-]+)/.exec(sheetWords)![1]!
    for (const { words } of pages) expect(words).toContain(code)
    expect(sheetWords).toContain('Local rules and licensed practice come first')

    const size = PAPERS[paper]
    for (const each of pages) {
      expect(Math.abs(each.width - size.width)).toBeLessThan(0.5)
      expect(Math.abs(each.height - size.height)).toBeLessThan(0.5)
      expect(each.images).toBe(0)
      expect(each.left).toBeGreaterThan(MARGIN - 0.5)
      expect(each.right).toBeLessThan(size.width - MARGIN + 0.5)
    }
    // two wheels with their rings, the worm and its threads, the motor, the marks, the tape: all of them lines
    expect(before[0]!.paths).toBeGreaterThan(40)
  })
}

test('nothing of a page runs over its end, whatever the kind of question', async ({ page }) => {
  await openWorksheet(page)
  const counts = sheet(page).getByRole('spinbutton')
  const titles = await counts.evaluateAll((inputs) =>
    inputs.map((each) => each.closest('label')?.textContent ?? ''),
  )
  const kinds = titles.flatMap((title, i) => (title === 'Versions for a class' ? [] : i))
  await sheet(page).getByLabel('Answers, on pages of their own').check()
  for (let from = 0; from < kinds.length; from += 11) {
    for (const i of kinds) await counts.nth(i).fill(i >= from && i < from + 11 ? '2' : '0')
    await page.evaluate(() => {
      window.print = () => undefined
    })
    await sheet(page).getByRole('button', { name: 'Print' }).click()
    await page.emulateMedia({ media: 'print' })
    const over = await page.locator('.worksheet-printed .ws-page').evaluateAll((all) =>
      all.flatMap((each) => {
        const last = each.querySelector('.ws-blocks')!.lastElementChild!.getBoundingClientRect().bottom
        const foot = each.querySelector('.ws-foot')!.getBoundingClientRect()
        const code = each.querySelector('.ws-code')!.getBoundingClientRect()
        return [foot.top - last, each.getBoundingClientRect().bottom - code.bottom]
      }),
    )
    expect(over.length).toBeGreaterThan(3)
    for (const left of over) expect(left).toBeGreaterThan(0)
    await page.emulateMedia({ media: 'screen' })
    await page.evaluate(() => dispatchEvent(new Event('afterprint')))
    await expect(page.locator('.worksheet-printed')).not.toBeAttached()
  }
})

test('a class has versions that differ; the same seed prints the same again', async ({ page }) => {
  await openWorksheet(page)
  await choose(page, ['turns-worm', 'torque-each'], 'class')
  await sheet(page).getByLabel('Versions for a class').fill('2')
  await sheet(page).getByLabel('Table for bench readings').uncheck()
  const pages = await printed(page)
  const ofVersion = (version: number) =>
    pages.filter(({ words }) => words.includes(`Seed class/${version}`)).map(({ words }) => words)
  for (const version of [1, 2]) {
    const words = ofVersion(version).join(' ')
    for (const question of asked(['turns-worm', 'torque-each'], `class/${version}`))
      expect(words).toMatch(inWords(question.text))
  }
  expect(ofVersion(1)).not.toEqual(ofVersion(2))
  const again = await printed(page)
  expect(again.map(({ words }) => words)).toEqual(pages.map(({ words }) => words))
})

test('the QR code leads to the same questions in Predict', async ({ page }) => {
  await openWorksheet(page)
  await choose(page, ['turns-worm', 'supply-peak'], 'link')
  const picture = await page.evaluate(async () => {
    const code = document.querySelector('dialog .ws-qr')!
    const quiet = 4
    const size = Number(code.getAttribute('viewBox')!.split(' ')[2])
    const canvas = document.createElement('canvas')
    canvas.width = canvas.height = 6 * (size + 2 * quiet)
    const pen = canvas.getContext('2d')!
    pen.fillStyle = '#fff'
    pen.fillRect(0, 0, canvas.width, canvas.height)
    const shown = new Image()
    const copy = code.cloneNode(true) as SVGElement
    copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
    copy.setAttribute('width', String(6 * size))
    copy.setAttribute('height', String(6 * size))
    shown.src = `data:image/svg+xml,${encodeURIComponent(copy.outerHTML)}`
    await shown.decode()
    pen.drawImage(shown, 6 * quiet, 6 * quiet)
    const { data, width } = pen.getImageData(0, 0, canvas.width, canvas.height)
    return { data: [...data], width }
  })
  const read = jsQR(new Uint8ClampedArray(picture.data), picture.width, picture.width)
  const link = read!.data
  expect(link.split('#')[0]).toBe(page.url().split('#')[0])

  const [first] = asked(['turns-worm'], 'link')
  await page.goto('about:blank')
  await page.goto(link)
  const column = page.getByRole('complementary', { name: 'Prediction sheet' })
  await expect(column).toContainText(first!.text)
  await expect(column).toContainText('1 of 2')
})

test('a sheet code brings the sheet back, and one that is wrong says so', async ({ page }) => {
  await openWorksheet(page)
  await choose(page, ['turns-angle', 'thrust-axial'], 'again')
  const preview = sheet(page).getByRole('region', { name: 'Preview' })
  const text = (await preview.textContent())!
  const code = (await preview.locator('.ws-foot .ws-code').textContent())!
  await sheet(page).getByRole('button', { name: 'Draw another' }).click()
  await sheet(page).getByLabel('This machine').check()
  await expect(preview.locator('.ws-foot .ws-code')).not.toHaveText(code)

  const field = sheet(page).getByLabel('Sheet code')
  await field.fill(`${code.slice(0, -1)}${code.endsWith('7') ? '8' : '7'}`)
  await field.press('Enter')
  await expect(sheet(page)).toContainText('This sheet code is not whole')
  await field.fill(code.toLowerCase().replaceAll('-', ' '))
  await field.press('Enter')
  await expect(sheet(page)).toContainText('Here is that sheet again.')
  expect(await preview.textContent()).toBe(text)
})

test('what cannot be printed says why, in words, and prints nothing', async ({ page }) => {
  await openWorksheet(page)
  await sheet(page).getByLabel('Seed').fill('two words')
  await expect(sheet(page).getByText(/^A seed is a word/)).toBeVisible()
  const print = sheet(page).getByRole('button', { name: 'Print' })
  await expect(print).toHaveAttribute('aria-disabled', 'true')
  await print.click({ force: true })
  await expect(page.locator('.worksheet-printed')).not.toBeAttached()
  await sheet(page).getByRole('button', { name: 'Draw another' }).click()
  await sheet(page).getByLabel('Versions for a class').fill('41')
  await expect(sheet(page).getByText('Versions are a whole number from 1 to 40.')).toBeVisible()
  await choose(page, [], 'empty')
  await sheet(page).getByLabel('Versions for a class').fill('1')
  await expect(sheet(page).getByText(/^No question is chosen/)).toBeVisible()
})

for (const theme of ['light', 'dark'] as const) {
  for (const [name, width, height] of [
    ['desk', 1440, 900],
    ['phone', 390, 844],
    ['narrow', 320, 700],
  ] as const) {
    test(`the sheet is accessible and runs nowhere over, ${theme}, ${name}`, async ({ page }) => {
      await page.setViewportSize({ width, height })
      await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' })
      await openWorksheet(page)
      for (const source of ['A lesson', 'Chosen kinds', 'This machine']) {
        await sheet(page).getByLabel(source).check()
        const { violations } = await new AxeBuilder({ page }).include('dialog[open]').analyze()
        expect(violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html}`))).toEqual([])
        const over = await sheet(page).evaluate((dialog) => dialog.scrollWidth - dialog.clientWidth)
        expect(over).toBeLessThanOrEqual(0)
      }
    })
  }
}
