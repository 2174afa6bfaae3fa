/** Some browsers read the address only after the click has been dealt with [ms]. */
const KEPT_FOR = 10_000

/** Hands a file to the browser's own saving. */
export function saveFile(name: string, type: string, content: BlobPart): void {
  const url = URL.createObjectURL(new Blob([content], { type }))
  const anchor = document.createElement('a')
  anchor.href = url
  anchor.download = name
  anchor.click()
  setTimeout(() => URL.revokeObjectURL(url), KEPT_FOR)
}
