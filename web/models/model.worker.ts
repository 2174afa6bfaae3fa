/** The other thread: message in, work, message out. It has no logic of its own. */
import { type Answer, type Request, answer } from './answer.ts'

export type Report = { readonly progress: string } | { readonly answer: Answer }

const post = (report: Report, transfer: Transferable[] = []) => self.postMessage(report, { transfer })

self.addEventListener('message', ({ data }: MessageEvent<Request>) => {
  const done = answer(data, (progress) => post({ progress }))
  post({ answer: done }, done.file ? [done.file.buffer] : [])
})
