/**
 * A formula as a small tree: written out once with symbols, once with the numbers put in, and worked out from the
 * same tree, so that what is shown is what was computed.
 */
import type { SymbolName } from './formula-symbols.ts'

export type Tree =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'pi' }
  | { readonly kind: 'symbol'; readonly name: SymbolName }
  | { readonly kind: 'sum'; readonly terms: readonly Tree[] }
  | { readonly kind: 'minus'; readonly of: Tree }
  | { readonly kind: 'product'; readonly factors: readonly Tree[] }
  | { readonly kind: 'fraction'; readonly above: Tree; readonly below: Tree }
  | { readonly kind: 'power'; readonly base: Tree; readonly exponent: number }
  | { readonly kind: 'root'; readonly of: Tree }
  | { readonly kind: 'magnitude'; readonly of: Tree }
  | { readonly kind: 'call'; readonly name: FunctionName; readonly of: Tree }

/** Angles are in degrees, as they are written. */
export type FunctionName = 'sin' | 'cos' | 'tan' | 'arctan'

const tree = (part: Tree | SymbolName | number): Tree => {
  if (typeof part === 'number') return { kind: 'number', value: part }
  return typeof part === 'string' ? { kind: 'symbol', name: part } : part
}
export type TreePart = Tree | SymbolName | number

export const PI: Tree = { kind: 'pi' }
export const sum = (...terms: TreePart[]): Tree => ({ kind: 'sum', terms: terms.map(tree) })
export const minus = (of: TreePart): Tree => ({ kind: 'minus', of: tree(of) })
export const product = (...factors: TreePart[]): Tree => ({ kind: 'product', factors: factors.map(tree) })
export const fraction = (above: TreePart, below: TreePart): Tree => ({
  kind: 'fraction',
  above: tree(above),
  below: tree(below),
})
export const power = (base: TreePart, exponent: number): Tree => ({
  kind: 'power',
  base: tree(base),
  exponent,
})
export const root = (of: TreePart): Tree => ({ kind: 'root', of: tree(of) })
export const magnitude = (of: TreePart): Tree => ({ kind: 'magnitude', of: tree(of) })
export const call = (name: FunctionName, of: TreePart): Tree => ({ kind: 'call', name, of: tree(of) })

const DEGREE = Math.PI / 180
const FUNCTIONS: Record<FunctionName, (x: number) => number> = {
  sin: (x) => Math.sin(x * DEGREE),
  cos: (x) => Math.cos(x * DEGREE),
  tan: (x) => Math.tan(x * DEGREE),
  arctan: (x) => Math.atan(x) / DEGREE,
}

export type Values = (name: SymbolName) => number

/** The number that a formula gives when every symbol has its value. */
export function worth(of: Tree, values: Values): number {
  const part = (inner: Tree) => worth(inner, values)
  switch (of.kind) {
    case 'number':
      return of.value
    case 'pi':
      return Math.PI
    case 'symbol':
      return values(of.name)
    case 'sum':
      return of.terms.reduce((total, term) => total + part(term), 0)
    case 'minus':
      return -part(of.of)
    case 'product':
      return of.factors.reduce((total, factor) => total * part(factor), 1)
    case 'fraction':
      return part(of.above) / part(of.below)
    case 'power':
      return part(of.base) ** of.exponent
    case 'root':
      return Math.sqrt(Math.max(0, part(of.of)))
    case 'magnitude':
      return Math.abs(part(of.of))
    case 'call':
      return FUNCTIONS[of.name](part(of.of))
  }
}

/** Every symbol of a formula, once, in the order in which it is read. */
export function symbolsOf(of: Tree): readonly SymbolName[] {
  const found = new Set<SymbolName>()
  const look = (part: Tree): void => {
    if (part.kind === 'symbol') found.add(part.name)
    else if (part.kind === 'sum') part.terms.forEach(look)
    else if (part.kind === 'product') part.factors.forEach(look)
    else if (part.kind === 'fraction') [part.above, part.below].forEach(look)
    else if (part.kind === 'power') look(part.base)
    else if ('of' in part) look(part.of)
  }
  look(of)
  return [...found]
}
