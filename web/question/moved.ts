/** The same things with one of them at another place; the same list where there is no such place. */
export function moved<T>(list: readonly T[], from: number, to: number): readonly T[] {
  if (from === to || !(from in list) || !(to in list)) return list
  const next = list.filter((_, i) => i !== from)
  next.splice(to, 0, list[from]!)
  return next
}
