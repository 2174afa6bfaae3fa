import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { type OtherWindow, openLine } from '../../web/channel/line.ts'
import type { Message } from '../../web/channel/message.ts'
import { ROOM_KEY, roomIn, roomOf } from '../../web/channel/room.ts'
import { DirectChannel, ROOM, closeChannels, homeOf } from '../support/channel-pages.ts'

const HERE = 'https://example.org'
const command = (seq: number): Message => ({
  v: 1,
  seq,
  kind: 'command',
  body: { from: 'a', to: 'b', command: 'next', value: 0 },
})
const presenter = { from: 'a', asks: true }

/** As where a page has no origin of its own */
function NoChannel() {
  throw new DOMException('', 'SecurityError')
}

beforeEach(() => vi.stubGlobal('BroadcastChannel', DirectChannel))
afterEach(() => {
  closeChannels()
  vi.unstubAllGlobals()
})

/** A window that keeps what it is told. */
function otherWindow() {
  const told: { message: unknown; target: string }[] = []
  const other: OtherWindow = { postMessage: (message, target) => told.push({ message, target }) }
  return { other, told }
}

/** A line that hears into a list, and how its window is told something. */
function lineAt(origin: string) {
  const home = homeOf(origin)
  const heard: Message[] = []
  const line = openLine(ROOM, (message) => heard.push(message), home)
  const tell = (data: unknown, from: string, source: OtherWindow | null) =>
    home.dispatchEvent(Object.assign(new Event('message'), { data, origin: from, source }))
  return { line, heard, tell }
}

test('two lines of one room hear each other and not themselves', () => {
  const a = lineAt(HERE)
  const b = lineAt(HERE)
  const elsewhere = new DirectChannel('counterturn.another')
  const strange: unknown[] = []
  elsewhere.addEventListener('message', (event) => strange.push(event))
  a.line.post('presenter', presenter)
  a.line.post('presenter', presenter)
  expect(b.heard.map(({ seq }) => seq)).toEqual([0, 1])
  expect(a.heard).toEqual([])
  expect(strange).toEqual([])
  b.line.close()
  a.line.post('presenter', presenter)
  expect(b.heard.length).toBe(2)
})

test('what comes by channel and by window is heard once', () => {
  const { heard, tell } = lineAt(HERE)
  const channel = new DirectChannel(`counterturn.${ROOM}`)
  const { other } = otherWindow()
  for (const seq of [0, 1]) {
    channel.postMessage(command(seq))
    tell(command(seq), HERE, other)
  }
  expect(heard.map(({ seq }) => seq)).toEqual([0, 1])
  tell(command(0), HERE, other)
  expect(heard.length).toBe(2)
})

test('a window of another origin is not heard, nor told anything', () => {
  const { line, heard, tell } = lineAt(HERE)
  const stranger = otherWindow()
  tell(command(0), 'https://example.com', stranger.other)
  tell(command(1), 'null', stranger.other)
  tell(command(2), HERE, null)
  expect(heard).toEqual([])
  line.post('presenter', presenter)
  expect(stranger.told).toEqual([])
})

test('without a channel two windows reach each other, and only their own origin', () => {
  vi.stubGlobal('BroadcastChannel', NoChannel)
  const { line, heard, tell } = lineAt(HERE)
  const known = otherWindow()
  line.post('presenter', presenter)
  expect(known.told).toEqual([])
  line.reach(known.other)
  line.post('presenter', presenter)
  expect(known.told.map(({ target }) => target)).toEqual([HERE])
  const back = otherWindow()
  tell(command(5), HERE, back.other)
  expect(heard.length).toBe(1)
  line.post('presenter', presenter)
  expect(back.told.length).toBe(1)
})

test('where pages have no origin of their own, only a window that was opened from here is heard', () => {
  vi.stubGlobal('BroadcastChannel', NoChannel)
  const { line, heard, tell } = lineAt('null')
  const opened = otherWindow()
  const stranger = otherWindow()
  line.reach(opened.other)
  tell(command(0), 'null', stranger.other)
  expect(heard).toEqual([])
  tell(command(0), 'null', opened.other)
  expect(heard.length).toBe(1)
  line.post('presenter', presenter)
  expect(opened.told.map(({ target }) => target)).toEqual(['*'])
  expect(stranger.told).toEqual([])
})

test('many senders do not fill the memory, and malformed messages are ignored', () => {
  const { heard } = lineAt(HERE)
  const channel = new DirectChannel(`counterturn.${ROOM}`)
  for (let sender = 0; sender < 500; sender++)
    channel.postMessage({ ...command(0), body: { ...command(0).body, from: `sender ${sender}` } })
  expect(heard.length).toBe(500)
  for (const bad of [
    null,
    1,
    'next',
    {},
    [],
    { v: 1 },
    { ...command(1), v: 2 },
    { ...command(1), kind: 'run' },
  ])
    channel.postMessage(bad)
  expect(heard.length).toBe(500)
})

test('the room is random, kept, and read from the address only where it is one', () => {
  const kept = new Map<string, string>()
  const keeper = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  }
  const room = roomOf(keeper)
  expect(room).toMatch(/^[0-9a-f]{32}$/)
  expect(roomOf(keeper)).toBe(room)
  expect(roomOf(null)).not.toBe(room)
  expect(roomIn(`#${room}`)).toBe(room)
  for (const hash of ['', '#', '#/demonstrate', `#${room}0`, `#${room.toUpperCase()}x`, '#<b>'])
    expect(roomIn(hash)).toBeNull()
  kept.set(ROOM_KEY, 'short')
  expect(roomOf(keeper)).toMatch(/^[0-9a-f]{32}$/)
})
