import { parse } from 'csv-parse/sync'
import { describe, expect, test } from 'vitest'
import { type Sheet, sheetsOf } from '../../../src/table/sheets/sheets.ts'
import { csvOf } from '../../../src/wire/sheets.ts'
import { SHEET_WORDS } from '../../../src/words/sheets.ts'
import { firedLoad, LOAD } from '../../fixtures/opened.ts'
import { lit, loadOf } from '../table/kiln-play.ts'
import { Play, START_MS } from '../table/play.ts'

const words = SHEET_WORDS.en

/** As a parser that shares no code with the writer reads it. */
const read = (csv: string): Record<string, string>[] => parse(csv, { bom: true, columns: true })

const one = (columns: readonly string[], line: Sheet['lines'][number], moments: readonly string[] = []) =>
  csvOf({ columns, moments, lines: [line] }, words)

describe('a sheet is read by another parser as it was', () => {
  const play = lit()
  const { loadId } = loadOf(play)
  play.wait(3600).act({ do: 'read-heat', loadId, tempC: -5.5, sure: true })
  const sheets = sheetsOf(play.table).sheets

  test('every pot, every coat, every load and reading, a line each', () => {
    const coats = read(csvOf(sheets.coats, words))
    const dips = Object.values(play.table.pots).flatMap((pot) => pot.dips)
    expect(coats).toHaveLength(dips.length)
    expect(dips.length).toBeGreaterThan(15)
    expect(read(csvOf(sheets.pots, words)).map(({ pot }) => pot)).toEqual([
      '31',
      '32',
      '33',
      '34',
      '35',
      '36',
      '37',
      '38',
    ])
    const [first] = Object.values(play.table.pots)
    if (!first) throw new Error('no pot')
    const whose = { ...first, facts: { ...first.facts, whose: 'Wren' } }
    const owned = { ...play.table, pots: { ...play.table.pots, [first.facts.potId]: whose } }
    expect(read(csvOf(sheetsOf(owned).sheets.pots, words))[0]).toMatchObject({ whose: 'Wren' })
    expect(read(csvOf(sheets.loads, words))).toMatchObject([{ load: '1', cone: '6', 'hold, min': '0' }])
    expect(read(csvOf(sheets.results, words))).toEqual([])
    for (const sheet of Object.values(sheets))
      expect(csvOf(sheet as Sheet, words).split('\r\n')[0]).not.toMatch(/undefined|[a-z][A-Z]/)
    expect(Object.keys(sheets).sort()).toEqual(Object.keys(words.file).sort())
  })

  test('a coat has its glaze, seconds, density, and its moment twice', () => {
    const [dip] = play.table.pots['demo.31']?.dips ?? []
    const first = read(csvOf(sheets.coats, words)).find(({ pot }) => pot === '31')
    const at = (dip?.outAt ?? 0) + play.table.skewMs
    expect(first).toMatchObject({
      coat: '1',
      glaze: play.table.buckets[dip?.bucketId ?? '']?.facts.name,
      'held, s': `${dip?.holdS}`,
      'density, g/ml': `${dip?.gramsPerMl}`,
      'lifted, UTC': new Date(at).toISOString().replace('.000', ''),
    })
    expect(Date.parse(first?.['lifted, UTC'] ?? '')).toBe(at)
    // The runner has one zone; the local time is the same moment in it.
    expect(new Date(first?.['lifted, local time'] ?? '').getTime()).toBe(at)
  })

  test('a coat that was washed off stays on record, and is told as off', () => {
    const washed = lit().act({ do: 'wash-off', potId: 'demo.31' })
    const rows = read(csvOf(sheetsOf(washed.table).sheets.coats, words)).filter(({ pot }) => pot === '31')
    expect(rows.map((row) => row['washed off'])).toEqual(['yes', 'yes', 'yes'])
  })

  test('a reading below zero is a number and no formula', () => {
    const [row] = read(csvOf(sheets.readings, words))
    expect(row?.['temperature, °C']).toBe('-5.5')
    expect(Date.parse(row?.['read, UTC'] ?? '')).toBeGreaterThan(START_MS)
  })
})

test('a result has its place, its run and its faults; a later look is a line of its own', () => {
  const play = new Play()
  for (const [i, hit] of firedLoad(START_MS, 'up').entries()) play.append(hit, `f${i}`)
  const looked = { kind: 'judged', loadId: LOAD, potId: 'demo.35' } as const
  play.append(
    [
      { kind: 'guessed', loadId: LOAD, potId: 'demo.35', mm: 4 },
      {
        ...looked,
        run: { is: 'measured', mm: 3 },
        stuck: 'tapped',
        faults: ['crawled', 'crazed'],
      },
      { ...looked, faults: ['crazed'], second: true },
    ],
    'j',
  )
  const rows = read(csvOf(sheetsOf(play.table).sheets.results, words))
  expect(rows).toMatchObject([
    {
      pot: '35',
      place: '2.1',
      load: '1',
      look: '1',
      run: 'measured',
      'run, mm': '3',
      // It stuck: a drip of it reached the shelf.
      'longest drip, mm': 'shelf',
      stuck: 'tapped',
      faults: 'crawled crazed',
      'guess, mm': '4',
      'left out': 'no',
    },
    { pot: '35', look: '2', run: '', 'run, mm': '', faults: 'crazed', 'guess, mm': '' },
  ])
})

describe('what could hurt a spreadsheet', () => {
  test.each(['=1+1', '+1', '-1 of it', '@SUM(A1)', '\tx', '\rx'])('%j is a text', (glaze) => {
    const [row] = read(one(['glaze'], { glaze }))
    expect(row?.glaze).toBe(`'${glaze}`)
  })

  test.each(['a, b', 'say "so"', 'two\nlines', 'ñandú 釉', ' spaced ', "it's"])(
    '%j stays as it is',
    (glaze) => {
      expect(read(one(['glaze', 'pot'], { glaze, pot: 3 }))).toEqual([{ glaze, pot: '3' }])
    },
  )

  test('begins with the mark of UTF-8, ends its lines with CRLF', () => {
    const csv = one(['pot', 'judged'], { pot: 1, judged: { atMs: 0 } }, ['judged'])
    expect(csv.charCodeAt(0)).toBe(0xfeff)
    expect(csv.slice(1).split('\r\n')).toHaveLength(2)
    expect(csv).toContain('1970-01-01T00:00:00Z')
  })

  test('no number, no moment: an empty cell', () => {
    expect(read(one(['pot', 'judged', 'runMm'], { pot: Number.NaN }, ['judged']))).toEqual([
      { pot: '', 'judged, local time': '', 'judged, UTC': '', 'run, mm': '' },
    ])
  })
})
