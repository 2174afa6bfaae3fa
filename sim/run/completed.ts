/** Runs a generator to its end at once. */
export function completed<Result>(steps: Generator<unknown, Result>): Result {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}
