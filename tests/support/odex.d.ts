/** The part of odex 2.0 that the tests use; the package brings no declarations of its own. */
declare module 'odex' {
  export class Solver {
    constructor(dimensions: number)
    absoluteTolerance: number
    relativeTolerance: number
    maxSteps: number
    initialStepSize: number
    solve(
      f: (x: number, y: number[]) => number[],
      x: number,
      y: number[],
      xEnd: number,
    ): { y: number[]; nEval: number; outcome: number }
  }
}
