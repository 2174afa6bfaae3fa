/** A formula as MathML, with its symbols or with the numbers put in. */
import { type ReactNode, createElement } from 'react'
import type { FormulaRow } from './formula.ts'
import { SYMBOLS, type SymbolName, symbolFigure } from './formula-symbols.ts'
import type { Tree, Values } from './formula-tree.ts'

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
    const value = values(name)
    const text = math('mn', symbolFigure(name, value))
    return value < 0 ? inBrackets(text) : text
  }

/** Between factors: a sign where numbers meet, else a thin space. */
const TIMES = operator('×')
const THIN = createElement('mspace', { width: '0.14em' })

function written(tree: Tree, write: Writer, times: ReactNode): ReactNode {
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
        ...tree.factors.flatMap((each, i) => (i === 0 ? [factor(each)] : [times, factor(each)])),
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
  const sign = term.kind === 'minus' ? '−' : '+'
  if (place === 0) return sign === '−' ? operator(sign) : null
  return createElement('mo', { form: 'infix', lspace: '0.25em', rspace: '0.25em' }, sign)
}
const callOf = (of: Tree, part: (tree: Tree) => ReactNode): ReactNode =>
  of.kind === 'symbol' ? part(of) : inBrackets(part(of))

interface FormulaMathProps {
  readonly row: FormulaRow
  /** The numbers to put in; without them the symbols stand. */
  readonly values?: Values
}

/** A sum is written term by term, so that a long one can go on in the next line. */
export function FormulaMath({ row, values }: FormulaMathProps) {
  const write = values ? asNumber(values) : asSymbol
  const times = values ? TIMES : THIN
  const terms = row.right.kind === 'sum' ? row.right.terms : [row.right]
  return (
    <p className="formula-line">
      {createElement('math', null, lettered(row.letter, row.index), operator('='))}
      {terms.map((term, place) => (
        <span key={place}>
          {createElement('math', null, signBefore(term, place), written(unsigned(term), write, times))}
        </span>
      ))}
    </p>
  )
}
