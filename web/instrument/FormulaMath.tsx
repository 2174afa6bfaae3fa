/** A formula as MathML, with its symbols or with the numbers put in. */
import { type ReactNode, createElement } from 'react'
import type { FormulaRow } from './formula.ts'
import { SYMBOLS, type SymbolName } from './formula-symbols.ts'
import type { Tree, Values } from './formula-tree.ts'
import { figureOf, givenFigure } from './reading-text.ts'

const math = (tag: string, ...parts: ReactNode[]): ReactNode => createElement(tag, null, ...parts)

const operator = (sign: string): ReactNode => math('mo', sign)
const inBrackets = (part: ReactNode): ReactNode => math('mrow', operator('('), part, operator(')'))

const lettered = (letter: string, index?: string): ReactNode =>
  index === undefined ? math('mi', letter) : math('msub', math('mi', letter), math('mtext', index))

export function SymbolMath({ name }: { readonly name: SymbolName }) {
  const { letter, index } = SYMBOLS[name]
  return createElement('math', null, lettered(letter, index))
}

/** How a symbol is written: as itself, or as its number, in brackets where a sign would meet an operator. */
type Writer = (name: SymbolName) => ReactNode

const asSymbol: Writer = (name) => lettered(SYMBOLS[name].letter, SYMBOLS[name].index)

const asNumber =
  (values: Values): Writer =>
  (name) => {
    const { origin, unit } = SYMBOLS[name]
    const value = values(name)
    const text = math('mn', origin === 'set' ? givenFigure(value) : figureOf(value, unit))
    return value < 0 ? inBrackets(text) : text
  }

function written(tree: Tree, write: Writer, times: string): ReactNode {
  const part = (inner: Tree) => written(inner, write, times)
  const factor = (inner: Tree) => (inner.kind === 'sum' ? inBrackets(part(inner)) : part(inner))
  switch (tree.kind) {
    case 'number':
      return math('mn', String(tree.value))
    case 'pi':
      return math('mi', 'π')
    case 'symbol':
      return write(tree.name)
    case 'sum':
      return math('mrow', ...tree.terms.flatMap((term, i) => [signBefore(term, i), part(unsigned(term))]))
    case 'minus':
      return math('mrow', operator('−'), factor(tree.of))
    case 'product':
      return math(
        'mrow',
        ...tree.factors.flatMap((each, i) => (i === 0 ? [factor(each)] : [operator(times), factor(each)])),
      )
    case 'fraction':
      return math('mfrac', part(tree.above), part(tree.below))
    case 'power':
      return math('msup', factor(tree.base), math('mn', String(tree.exponent)))
    case 'root':
      return math('msqrt', part(tree.of))
    case 'magnitude':
      return math('mrow', operator('|'), part(tree.of), operator('|'))
    case 'call':
      return math('mrow', math('mi', tree.name), operator('\u2061'), callOf(tree.of, part))
  }
}

const unsigned = (term: Tree): Tree => (term.kind === 'minus' ? term.of : term)
const signBefore = (term: Tree, place: number): ReactNode => {
  if (term.kind === 'minus') return operator('−')
  return place === 0 ? null : operator('+')
}
const callOf = (of: Tree, part: (tree: Tree) => ReactNode): ReactNode =>
  of.kind === 'symbol' ? part(of) : inBrackets(part(of))

interface FormulaMathProps {
  readonly row: FormulaRow
  /** The numbers to put in; without them the symbols stand. */
  readonly values?: Values
}

export function FormulaMath({ row, values }: FormulaMathProps) {
  const right = values ? written(row.right, asNumber(values), '×') : written(row.right, asSymbol, '\u2009')
  return createElement('math', { display: 'block' }, lettered(row.letter, row.index), operator('='), right)
}
