/**
 * The line between two windows: a channel of the browser with a random part in its name, and, where that does not
 * reach, messages from window to window with a check of where they come from. What comes by both ways is heard once.
 */
import { type Body, type Kind, type Message, readMessage } from './message.ts'

/** Senders that are remembered; a page that is opened again is another one. Our choice. */
const MOST_SENDERS = 64

/** What a window is to the line; a test has its own. */
export interface OtherWindow {
  postMessage(message: unknown, target: string): void
}

/** The page that a line ends in: where it comes from, and where messages arrive. */
export interface Home extends Pick<EventTarget, 'addEventListener' | 'removeEventListener'> {
  readonly origin: string
}

export interface Line {
  post<K extends Kind>(kind: K, body: Body<K>): void
  /** Also speaks to this window. */
  reach(other: OtherWindow): void
  close(): void
}

/** Of each sender what came last, so that nothing is heard twice. */
function onlyOnce(): (message: Message) => boolean {
  const last = new Map<string, number>()
  return ({ seq, body: { from } }) => {
    if (seq <= (last.get(from) ?? -1)) return false
    last.delete(from)
    last.set(from, seq)
    const [oldest] = last.keys()
    if (last.size > MOST_SENDERS && oldest !== undefined) last.delete(oldest)
    return true
  }
}

function openChannel(room: string): BroadcastChannel | null {
  try {
    return new BroadcastChannel(`counterturn.${room}`)
  } catch {
    return null
  }
}

export function openLine(room: string, hear: (message: Message) => void, home: Home = globalThis): Line {
  const isNew = onlyOnce()
  const others = new Set<OtherWindow>()
  const channel = openChannel(room)
  let seq = 0
  const take = (data: unknown) => {
    const message = readMessage(data)
    if (message && isNew(message)) hear(message)
  }
  const fromChannel = ({ data }: MessageEvent) => take(data)
  const fromWindow = (event: Event) => {
    const { origin, source, data } = event as MessageEvent
    if (origin !== home.origin || !source || !readMessage(data)) return
    const other = source as OtherWindow
    // Pages without an origin of their own look all the same, so there only a window that is known is heard.
    if (home.origin === 'null' && !others.has(other)) return
    others.add(other)
    take(data)
  }
  channel?.addEventListener('message', fromChannel)
  home.addEventListener('message', fromWindow)
  return {
    post(kind, body) {
      const message = { v: 1, seq: seq++, kind, body }
      channel?.postMessage(message)
      for (const other of others) other.postMessage(message, home.origin === 'null' ? '*' : home.origin)
    },
    reach: (other) => void others.add(other),
    close() {
      channel?.close()
      home.removeEventListener('message', fromWindow)
    },
  }
}
