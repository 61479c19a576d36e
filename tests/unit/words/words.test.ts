import { describe, expect, test } from 'vitest'
import { type Language, WORDS, type Words } from '../../../src/words/bench.ts'
import { DESK_WORDS } from '../../../src/words/desk.ts'
import { end } from '../../../src/words/en/end.ts'
import { OPENING_WORDS } from '../../../src/words/opening.ts'
import { PHOTO_WORDS } from '../../../src/words/photo-outline.ts'
import { ROOM_WORDS } from '../../../src/words/room.ts'

/** What texts may be filled with that take their facts by name. */
const FACTS = {
  number: 34,
  letter: 'G',
  by: 'Gatepost',
  value: 145,
  least: 1,
  most: 2,
  day: '2026-03-03',
  records: 7,
  pots: 3,
  pictures: 1,
  fresh: 2,
}
const NAMED = /^\.(refusal|room\.looked)/

/** Every text of a tree with the path it stands at; functions are called with stand-ins. */
function texts(node: unknown, path = ''): [string, string][] {
  if (typeof node === 'string') return [[path, node]]
  if (typeof node === 'function') {
    const said: unknown = node(
      ...Array.from({ length: Math.max(1, node.length) }, () => (NAMED.test(path) ? FACTS : '7')),
    )
    return [[path, String(said)]]
  }
  if (Array.isArray(node)) return node.flatMap((item, i) => texts(item, `${path}.${i}`))
  if (node !== null && typeof node === 'object')
    return Object.entries(node).flatMap(([key, value]) => texts(value, `${path}.${key}`))
  return []
}

describe.each(Object.entries(WORDS) as [Language, Words][])('%s', (language, words) => {
  const { desk, ...bench } = DESK_WORDS[language]
  const all = texts({
    ...words,
    ...bench,
    desk,
    opening: OPENING_WORDS[language],
    room: ROOM_WORDS[language],
    photo: PHOTO_WORDS[language],
  })

  test('no text has a hole in it', () => {
    expect(all.length).toBeGreaterThan(200)
    for (const [path, text] of all) {
      expect(text, path).not.toMatch(/undefined|null|NaN|\[object/)
    }
  })

  test('food safety is nowhere claimed', () => {
    for (const [path, text] of all) {
      if (!/\b(food|dinnerware|eat)\b/i.test(text)) continue
      expect(text, path).toMatch(/cannot|never|not/i)
    }
  })

  test('what is said beside a field fits under it', () => {
    for (const [path, text] of texts(desk.wrong)) expect(text.length, path).toBeLessThanOrEqual(40)
  })

  test('what a tile says fits on a tile', () => {
    for (const [path, text] of texts(desk.board.state)) expect(text.length, path).toBeLessThanOrEqual(6)
    for (const [path, text] of texts(desk.board.kiln)) expect(text.length, path).toBeLessThanOrEqual(11)
  })
})

describe('a range over midnight', () => {
  test('names the day that it begins on', () => {
    expect(end.days('', 'tomorrow')).toBe('today – tomorrow')
    expect(end.days('tomorrow', 'Thursday')).toBe('tomorrow – Thursday')
    expect(end.days('', '')).toBe('')
  })
})
