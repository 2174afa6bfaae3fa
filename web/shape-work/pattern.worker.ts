/** The other thread: a request in, one call, and the patterns back. */
import { type PatternRequest, flankPatterns } from './flank-patterns.ts'

self.addEventListener('message', ({ data }: MessageEvent<PatternRequest>) =>
  self.postMessage(flankPatterns(data)),
)
