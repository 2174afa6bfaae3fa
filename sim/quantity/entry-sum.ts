/**
 * The value of a sum. mathjs makes the tree; here it is folded on plain numbers: + - * / ^, brackets, pi, sqrt, and
 * sin, cos, tan of degrees or radians, within limits that a sum on paper never meets.
 */
import type { MathNode } from 'mathjs'
import {
  isConstantNode,
  isFunctionNode,
  isOperatorNode,
  isParenthesisNode,
  isSymbolNode,
} from 'mathjs/number'
import { Unreadable } from './entry-fault.ts'
import { unitLike } from './entry-units.ts'
import { parse } from './grammar.ts'

const MOST_NODES = 40
const DEEPEST = 12
const LARGEST_EXPONENT = 6
const LARGEST_BASE = 1e6
/** A cosine below this is none but for rounding. */
const NO_COSINE = 1e-12

const WORD_OR_NUMBER = /\d+\.?\d*(?:[eE][+-]?\d+)?|[A-Za-z]+/g
const TURNING = /^(?:sin|cos|tan)$/
const OTHER_WORDS = /^(?:pi|sqrt|deg|rad)$/
/** sin(30 deg): what stands between has no brackets of its own. */
const OF_ANGLE = /(sin|cos|tan) ?\(([^()]*?) ?(deg|rad)\)/g

/** Of an angle in degrees or radians, as the functions of the tree are named. */
const FUNCTIONS: Readonly<Record<string, (x: number) => number>> = {
  sqrt: Math.sqrt,
  sinrad: Math.sin,
  cosrad: Math.cos,
  tanrad: tangent,
  sindeg: (x) => Math.sin((x * Math.PI) / 180),
  cosdeg: (x) => Math.cos((x * Math.PI) / 180),
  tandeg: (x) => tangent((x * Math.PI) / 180),
}

function tangent(x: number): number {
  return Math.abs(Math.cos(x)) < NO_COSINE ? Number.NaN : Math.tan(x)
}

function wordFault(word: string): Unreadable {
  const like = unitLike(word)
  if (like === word) {
    return new Unreadable('unreadable', `Write the unit once, at the end; “${word}” stands elsewhere.`)
  }
  const hint = like === null ? 'write numbers, units and sums' : `the unit is written ${like}`
  return new Unreadable('unknown-word', `“${word}” is not known here; ${hint}.`)
}

function checkWords(sum: string): void {
  if (sum.includes('%')) throw wordFault('%')
  for (const [word] of sum.matchAll(WORD_OR_NUMBER)) {
    if (/^\d/.test(word) || TURNING.test(word) || OTHER_WORDS.test(word)) continue
    throw wordFault(word)
  }
}

/** Angles named in the functions; a function of a bare number is refused, as is an angle anywhere else. */
function withNamedAngles(sum: string): string {
  const named = sum.replaceAll(OF_ANGLE, '$1$3($2)')
  const [bare] = /\b(?:sin|cos|tan)\b/.exec(named) ?? []
  if (bare !== undefined) {
    throw new Unreadable('angle-unit', `Say deg or rad, as in ${bare}(30 deg); neither came.`)
  }
  const [loose] = /\b(?:deg|rad)\b/.exec(named.replaceAll(/(?<=\d)(?=[a-z])/g, ' ')) ?? []
  if (loose !== undefined) throw wordFault(loose)
  return named
}

function treeOf(sum: string): MathNode {
  try {
    return parse(sum)
  } catch {
    throw new Unreadable('unreadable', `Write a number or a sum; “${sum}” has a part missing or too many.`)
  }
}

function power(base: number, exponent: number): number {
  if (Math.abs(exponent) > LARGEST_EXPONENT) {
    throw new Unreadable('too-large', `An exponent is at most ${LARGEST_EXPONENT}; ${exponent} came.`)
  }
  if (Math.abs(base) > LARGEST_BASE) {
    throw new Unreadable('too-large', `At most a million is raised to a power; ${base} came.`)
  }
  return base ** exponent
}

/** Only pi, a root or a function may stand right behind a number; 2(3) can be read in two ways. */
const sideBySide = (node: MathNode): boolean =>
  isOperatorNode(node) &&
  node.implicit &&
  !node.args.slice(1).every((each) => isSymbolNode(each) || isFunctionNode(each))

function operate(op: string, a: number, b: number | undefined): number {
  if (b === undefined) {
    if (op === '-') return -a
    if (op === '+') return a
  } else {
    if (op === '+') return a + b
    if (op === '-') return a - b
    if (op === '*') return a * b
    if (op === '/') return a / b
    if (op === '^') return power(a, b)
  }
  throw new Unreadable('unreadable', `Only + − × ÷ and ^ are read; ${op} came.`)
}

/** Counts what it folds, so that no tree is larger than a person writes. */
function folding() {
  let nodes = 0
  const valueOf = (node: MathNode, depth: number): number => {
    nodes += 1
    if (nodes > MOST_NODES || depth > DEEPEST) {
      throw new Unreadable(
        'too-large',
        'Write a shorter sum, with fewer brackets; this one has too many parts.',
      )
    }
    if (isParenthesisNode(node)) return valueOf(node.content, depth + 1)
    if (isConstantNode(node) && typeof node.value === 'number') return node.value
    if (isSymbolNode(node) && node.name === 'pi') return Math.PI
    if (sideBySide(node)) {
      throw new Unreadable('unreadable', 'Write × or + between two numbers; they stand side by side.')
    }
    if (isOperatorNode(node)) {
      const [first, second] = node.args.map((each) => valueOf(each, depth + 1))
      if (first !== undefined) return operate(node.op, first, second)
    }
    if (isFunctionNode(node)) {
      const [of, ...more] = node.args
      const act = FUNCTIONS[node.fn.name]
      if (act && of && more.length === 0) return act(valueOf(of, depth + 1))
    }
    throw new Unreadable('unreadable', 'Write a number or a sum of numbers; something else came.')
  }
  return valueOf
}

/** The value of a sum without units. */
export function sumValue(sum: string): number {
  checkWords(sum)
  const value = folding()(treeOf(withNamedAngles(sum)), 1)
  if (!Number.isFinite(value)) {
    throw new Unreadable('not-finite', `“${sum}” has no finite value; write a sum that has one.`)
  }
  return value
}
