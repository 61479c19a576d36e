import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { edited, messagesIn, wordsFolder } from '../../fixtures/translated.ts'
import { leavesOf } from '../../tools/words/leaves.mjs'
import { readPo, writePo } from '../../tools/words/po.mjs'
import { type Folder, tallyOf } from '../../tools/words/texts.mjs'

const english = wordsFolder('en')
const spanish = wordsFolder('es')
const po = writePo('es', english, spanish)

/** Some files of a folder. */
const only = (folder: Folder, files: readonly string[]): Folder =>
  new Map([...folder].filter(([file]) => files.includes(file)))

/** A source without its texts. */
function codeOf(source: string): string {
  let code = source
  const outer = leavesOf(source).filter(
    (it, _, all) => !all.some((o) => o.start < it.start && it.end < o.end),
  )
  for (const { start, end } of outer.reverse()) code = `${code.slice(0, start)}§${code.slice(end)}`
  return code
}

describe('texts in a source', () => {
  const source = `
    /** Of all. */
    export const w = {
      /** On a key. */
      plain: 'Stir \\u00a0it',
      fill: (name: string) => \`Stir \${name}\`,
      facts: (f: Facts) => \`Not \${f.number}\`,
      many: (n: number) => (isOne(n) ? '1 pot' : \`\${n} pots\`),
      part: (on: string) => \`Pan\${on === '' ? '' : \` on \${hour(on)}\`}.\`,
      list: ['a', 'b'].filter(Boolean).join(', '),
    } as const
  `
  it('are told with their place, their way and what fills them', () => {
    expect(
      leavesOf(source).map(({ path, way, text, comment }) => [path, way.join(' / '), text, comment]),
    ).toEqual([
      ['w.plain', '', 'Stir \u00a0it', 'On a key.'],
      ['w.fill', '', 'Stir {name}', ''],
      ['w.facts', '', 'Not {number}', ''],
      ['w.many', 'isOne(n)+', '1 pot', ''],
      ['w.many', 'isOne(n)-', '{n} pots', ''],
      ['w.part', '', 'Pan{1}.', ''],
      ['w.part', "{1} / on === ''+", '', ''],
      ['w.part', "{1} / on === ''-", ' on {hour(on)}', ''],
      ['w.list.0', '', 'a', ''],
      ['w.list.1', '', 'b', ''],
    ])
  })

  it('may hold no braces of their own, which stand for what is filled in', () => {
    expect(() => leavesOf("export const w = { a: 'a {b}' }")).toThrow('braces')
  })
})

describe('the texts of Spanish', () => {
  it('are all in its PO file, and translated, but for words that both languages have', () => {
    const said = messagesIn(po)
    expect(said.size).toBeGreaterThan(2300)
    expect([...said].filter(([, { msgstr }]) => msgstr.includes('')).map(([context]) => context)).toEqual([
      'opening/opening.score.app',
      'other/other.ring.no',
      'photo-outline/photo.look.no',
      'room/room.candles.no',
      'sheets/sheets.no',
    ])
  })

  it('are out of reach only in the grammar of hours and in one short form', () => {
    expect(tallyOf('es', english, spanish).alone).toEqual([
      'clocks/hour',
      'clocks/fromTo',
      'clocks/at',
      'clocks/of',
      'clocks/about',
      'room/images',
    ])
  })

  it('stay as they are, byte for byte, when the file comes back as it went', () => {
    for (const text of [po, edited(po, () => {})])
      expect(readPo(text, 'es', english, spanish)).toEqual({
        changed: new Map(),
        texts: 0,
        left: [],
        wrong: [],
      })
  })
})

describe('an edited PO file', () => {
  // Whatever a source has to write otherwise, and what no editor of texts should have to know of.
  const words = fc.stringMatching(/^[a-zñé¿’'"`\\$%\u00a0\u2013 !/*-]{0,12}$/)
  const spoken = (text: string, said: readonly string[]) =>
    said[0] + (text.match(/\{[^}]*\}/g) ?? []).map((hole, i) => hole + said[(i + 1) % said.length]).join('')

  const files = [...spanish.keys()].filter((file) => file !== 'index.ts')

  it('changes the texts that it changes, and nothing beside them', () => {
    fc.assert(
      fc.property(
        fc.subarray(files, { minLength: 1, maxLength: 3 }),
        fc.infiniteStream(fc.tuple(fc.nat(3), fc.array(words, { minLength: 2, maxLength: 5 }))),
        (some, stream) => {
          const [en, es] = [only(english, some), only(spanish, some)]
          const text = edited(writePo('es', en, es), (message) => {
            const { value } = stream.next()
            const [kept, said] = value ?? [0, ['']]
            // A text that says nothing is one that is not translated.
            if (kept > 0)
              message.msgstr = message.msgstr.map((it) => spoken(it || message.msgid, said) || '-')
          })
          const { changed, left, wrong } = readPo(text, 'es', en, es)
          expect([left, wrong]).toEqual([[], []])
          const said = (po: string) => [...messagesIn(po)].map(([context, { msgstr }]) => [context, msgstr])
          expect(said(writePo('es', en, new Map([...es, ...changed])))).toEqual(said(text))
          for (const [file, source] of changed) expect(codeOf(source)).toBe(codeOf(es.get(file) ?? ''))
        },
      ),
      { numRuns: 12, seed: 19 },
    )
  })

  it.each([
    ['a text there is none of', 'cards/cards.bench.nowhere', 'Foso', ['there is no such text']],
    [
      'what is not filled in',
      'cards/cards.bench.stirTitle',
      'Remueve',
      ['filled with nothing, and has to be with {name}'],
    ],
    ['what nothing fills', 'cards/cards.bench.stirTitle', 'Remueve {name} {place}', ['{name} {place}']],
    ['what is filled in twice', 'cards/cards.bench.stirTitle', '{name}: {name}', ['{name} {name}']],
    [
      'half a pair of braces',
      'cards/cards.bench.stirTitle',
      'Remueve {name',
      ['a brace without its other one'],
    ],
    ['a line that breaks', 'cards/cards.bench.hold', 'Pausa\nya', ['breaks a line']],
  ])('is refused for %s', (_, context, said, why) => {
    const other = context.endsWith('nowhere') ? 'cards/cards.bench.hold' : context
    const text = edited(po, (message, at) => {
      if (at !== other) return
      message.msgctxt = context
      message.msgstr = [said]
    })
    const { wrong } = readPo(text, 'es', english, spanish)
    expect(wrong).toHaveLength(1)
    for (const it of [context, ...why]) expect(wrong[0]).toContain(it)
  })

  it('is refused in another language than the folder', () => {
    expect(readPo(po.replace('Language: es', 'Language: de'), 'es', english, spanish).wrong).toEqual([
      'it is in de, not es',
    ])
  })

  it('may leave out the number of one alone, and say it', () => {
    const text = edited(po, (message, context) => {
      if (context === 'cards/cards.bench.stirWaiting') message.msgstr = ['{n} pieza', '{n} pzs.']
      if (context === 'opening/opening.tally.ran') message.msgstr = ['una escurrió', '{n} escurrieron']
    })
    const { changed, texts, wrong } = readPo(text, 'es', english, spanish)
    expect([texts, wrong]).toEqual([3, []])
    const hole = '$' + '{n}'
    expect(changed.get('cards.ts')).toContain(`? \`${hole} pieza\` : \`${hole} pzs.\``)
    expect(changed.get('opening.ts')).toContain(`? 'una escurrió' : \`${hole} escurrieron\``)
  })

  it('is taken but for what is doubtful, or says an English that is another now', () => {
    const text = edited(po, (message, context) => {
      if (context === 'cards/cards.bench.hold') message.comments = { flag: 'fuzzy' }
      if (context === 'cards/cards.bench.board') message.msgid = 'The board'
      if (/cards.bench.(hold|board|other)$/.test(context)) message.msgstr = ['Otra cosa']
    })
    const { changed, texts, left, wrong } = readPo(text, 'es', english, spanish)
    expect([[...changed.keys()], texts, wrong]).toEqual([['cards.ts'], 1, []])
    expect(left).toEqual([
      'cards/cards.bench.hold: marked as fuzzy',
      'cards/cards.bench.board: the English is another now',
    ])
  })
})
