/** The random part of the channel's name, kept so that a stage that is opened again meets its presenter window. */
import { type Keeper, browserKeeper, keep, kept } from '../file/storage.ts'

export const ROOM_KEY = 'counterturn.room'

const ROOM = /^[0-9a-f]{32}$/

/** 128 random bits, as small letters and digits */
export const randomName = (): string =>
  [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('')

export function roomOf(keeper: Keeper | null = browserKeeper()): string {
  const known = kept(keeper, ROOM_KEY)
  if (known !== null && ROOM.test(known)) return known
  const room = randomName()
  keep(keeper, ROOM_KEY, room)
  return room
}

/** Null where the address names no room. */
export function roomIn(hash: string): string | null {
  const room = hash.replace(/^#/, '')
  return ROOM.test(room) ? room : null
}
