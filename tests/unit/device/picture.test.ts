/** Which JPEG bears nothing but its picture, by segments put together by hand (ITU-T T.81, annex B; T.871). */
import { expect, test } from 'vitest'
import { isBare } from '../../../src/device/picture.ts'

const letters = (text: string) => [...text].map((letter) => letter.charCodeAt(0))
const segment = (marker: number, body: readonly number[]) => [
  0xff,
  marker,
  (body.length + 2) >> 8,
  (body.length + 2) & 255,
  ...body,
]
const START = [0xff, 0xd8]
const END = [0xff, 0xd9]
const JFIF = segment(0xe0, [...letters('JFIF\0'), 1, 1, 0, 0, 1, 0, 1, 0, 0])
const TABLES = [...segment(0xdb, Array(65).fill(1)), ...segment(0xc0, Array(9).fill(8))]
/** A scan with a stuffed 0xff and a restart in it. */
const SCAN = [
  ...segment(0xc4, Array(20).fill(2)),
  ...segment(0xda, Array(6).fill(0)),
  5,
  0xff,
  0,
  7,
  0xff,
  0xd3,
  9,
]
const jpeg = (...parts: readonly (readonly number[])[]) => Uint8Array.from(parts.flat())
const PLACE = letters('Exif\0\0GPSLatitude')

test('a picture as a canvas writes it is bare, in one scan or several', () => {
  expect(isBare(jpeg(START, JFIF, TABLES, SCAN, END))).toBe(true)
  expect(isBare(jpeg(START, TABLES, SCAN, SCAN, END))).toBe(true)
  const colours = segment(0xe2, letters('ICC_PROFILE\0\x01\x01 and what its colours mean'))
  expect(isBare(jpeg(START, JFIF, colours, TABLES, SCAN, END))).toBe(true)
})

test.each<[string, Uint8Array]>([
  ['what a camera writes', jpeg(START, JFIF, segment(0xe1, PLACE), TABLES, SCAN, END)],
  ['a second picture behind its end', jpeg(START, JFIF, TABLES, SCAN, END, START, segment(0xe1, PLACE), END)],
  ['a place between its scans', jpeg(START, JFIF, TABLES, SCAN, segment(0xe1, PLACE), SCAN, END)],
  ['a list of pictures behind it', jpeg(START, JFIF, segment(0xe2, letters('MPF\0')), TABLES, SCAN, END)],
  ['a comment', jpeg(START, JFIF, segment(0xfe, PLACE), TABLES, SCAN, END)],
  ['a thumbnail', jpeg(START, segment(0xe0, [...letters('JFXX\0'), 0x10, ...PLACE]), TABLES, SCAN, END)],
  ['words of a program', jpeg(START, JFIF, segment(0xed, PLACE), TABLES, SCAN, END)],
  ['words behind its end', jpeg(START, JFIF, TABLES, SCAN, END, PLACE)],
  ['no end', jpeg(START, JFIF, TABLES, SCAN)],
  ['a segment of no length', jpeg(START, [0xff, 0xdb, 0, 0], TABLES, SCAN, END)],
  ['nothing in it', jpeg()],
  ['another kind', Uint8Array.from(letters('\x89PNG\r\n'))],
])('one with %s is not', (_what, bytes) => {
  expect(isBare(bytes)).toBe(false)
})

test('cut anywhere it is not', () => {
  const whole = jpeg(START, JFIF, TABLES, SCAN, END)
  for (let end = 0; end < whole.length; end++) expect(isBare(whole.subarray(0, end)), `${end}`).toBe(false)
})
