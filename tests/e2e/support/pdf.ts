/** The words of a printed page, read from its PDF by an independent reader. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

export interface PrintedSheet {
  readonly words: string
  /** [pt] */
  readonly width: number
  readonly height: number
}

export async function readPdf(pdf: Uint8Array): Promise<PrintedSheet[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), useSystemFonts: true }).promise
  const sheets: PrintedSheet[] = []
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number)
    const { items } = await page.getTextContent()
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view
    const words = items.map((item) => ('str' in item ? item.str : '')).join(' ')
    sheets.push({ words: words.replace(/\s+/g, ' '), width: right - left, height: top - bottom })
  }
  await document.destroy()
  return sheets
}
