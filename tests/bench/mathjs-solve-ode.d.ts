/** What mathjs has and does not declare. */
import 'mathjs'

declare module 'mathjs' {
  export function solveODE(
    rates: (t: number, y: number[]) => number[],
    span: readonly [number, number],
    start: readonly number[],
    options: { readonly tol: number; readonly firstStep: number; readonly maxIter: number },
  ): { readonly t: number[]; readonly y: number[][] }
}
