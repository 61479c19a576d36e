import type { KilnFacts } from '../../../shared/load.ts'
import type { BoardFacts, BucketFacts, CoatFacts, FiringFacts, PotFacts } from '../../../shared/nouns.ts'
import type { ThingFacts } from '../../table/model/ask.ts'
import type { Table } from '../../table/model/state.ts'
import { BUCKET_WORDS } from '../../words/buckets.ts'
import type { Formats } from '../../words/format.ts'
import { KILN_FORM_WORDS } from '../../words/kiln-form.ts'
import type { MeetingWords } from '../../words/meeting.ts'
import { amount, placeText } from '../text/amounts.ts'
import { coverText } from '../text/pot-text.ts'
import { type SettingTexts, settingValues } from './setting-lines.ts'

type KilnWords = (typeof KILN_FORM_WORDS)[keyof typeof KILN_FORM_WORDS]

const MEASURES = ['heightMm', 'rimMm', 'bellyMm', 'footMm', 'wallMm', 'footLineMm'] as const

/** How a thing is as one phone has it, where another has it otherwise; a line each. */
export function factLines(
  texts: SettingTexts,
  formats: Formats,
  table: Table,
  thing: ThingFacts,
  others: readonly ThingFacts[],
): string[] {
  const { words } = texts
  const lines = linesOf(texts, formats, table, thing)
  const theirs = others.map((other) => linesOf(texts, formats, table, other))
  const own = lines.filter((line, i) => theirs.length === 0 || theirs.some((other) => line !== other[i]))
  return own.length > 0 ? own.filter((line) => line !== '') : [words.meeting.fact.other]
}

function linesOf(texts: SettingTexts, formats: Formats, table: Table, thing: ThingFacts): string[] {
  const { words } = texts
  switch (thing.is) {
    case 'pot':
      return potLines(words, table, thing.facts)
    case 'stack':
      return [thing.facts.name, coatsLine(words, formats, table, thing.facts.coats)]
    case 'plan':
      return [coatsLine(words, formats, table, thing.facts.coats)]
    case 'restacked':
      return [words.meeting.fact.stack(table.stacks[thing.facts.stackId]?.name ?? '')]
    case 'dip': {
      const { potId, bucketId, holdS, outAt } = thing.facts
      const pot = potId === undefined ? undefined : table.pots[potId]?.facts.number
      return [
        pot === undefined ? '' : words.meeting.pot(pot),
        bucketId === undefined ? '' : (table.buckets[bucketId]?.facts.name ?? ''),
        holdS === undefined ? '' : words.meeting.held(amount('heldS', holdS, table.settings.units)),
        outAt === undefined ? '' : words.meeting.out(texts.moment(outAt + table.skewMs)),
      ]
    }
    case 'board':
      return boardLines(words, table, thing.facts)
    case 'bucket':
      return bucketLines(words, table, thing.facts)
    case 'settings':
      return settingValues(texts, thing.facts)
    case 'firing':
      return firingLines(words, table, thing.facts)
    case 'kiln':
      return kilnLines(formats, KILN_FORM_WORDS[table.settings.language], thing.facts)
    case 'pair': {
      const { well, badly } = BUCKET_WORDS[table.settings.language].pairs
      return [`${well}: ${thing.facts.proved}`, `${badly}: ${thing.facts.wrong}`]
    }
  }
}

function potLines(
  words: MeetingWords,
  table: Table,
  { number, place, stackId, shape, whose, absorption, bisqueCone }: PotFacts,
): string[] {
  const { fact } = words.meeting
  const { units } = table.settings
  return [
    fact.number(number),
    fact.place(placeText(place)),
    fact.stack(table.stacks[stackId]?.name ?? ''),
    whose === undefined ? '' : fact.whose(whose),
    words.desk.form[shape.form],
    ...MEASURES.map((field) => {
      const length = shape[field]
      return length === undefined ? '' : fact[field](amount(field, length, units))
    }),
    absorption === undefined ? '' : fact.absorption(amount('absorption', absorption, units)),
    bisqueCone === undefined ? '' : fact.cone(bisqueCone),
  ]
}

const coatsLine = (
  words: MeetingWords,
  formats: Formats,
  table: Table,
  coats: readonly CoatFacts[],
): string =>
  coats
    .map(({ bucketId, cover, holdS }) =>
      words.meeting.fact.coat(
        table.buckets[bucketId]?.facts.name ?? '',
        coverText(words, formats, cover),
        amount('heldS', holdS, table.settings.units),
      ),
    )
    .join('; ')

function boardLines(words: MeetingWords, table: Table, facts: BoardFacts): string[] {
  const { fact } = words.meeting
  const { units } = table.settings
  return [
    fact.wallMm(amount('wallMm', facts.wallMm, units)),
    fact.footLineMm(amount('footLineMm', facts.footLineMm, units)),
    fact.cone(facts.bisqueCone),
    fact.absorption(amount('absorption', facts.absorption, units)),
  ]
}

function bucketLines(words: MeetingWords, table: Table, facts: BucketFacts): string[] {
  const { fact } = words.meeting
  const { units } = table.settings
  return [
    facts.name,
    fact.letter(facts.letter),
    fact.litres(amount('litres', facts.litres, units)),
    fact.density(amount('gramsPerMl', facts.targetGramsPerMl, units)),
    fact.coatLimit(amount('limitMm', facts.limitMm, units)),
    fact.insideMm(amount('insideMm', facts.insideMm, units)),
    fact.heightMm(amount('heightMm', facts.heightMm, units)),
  ]
}

function firingLines(words: MeetingWords, table: Table, facts: FiringFacts): string[] {
  const { units } = table.settings
  const { firing } = words.desk.melt
  return [
    `${firing.wasCone(facts.cone)}, ${firing.makes[facts.make]}`,
    `${firing.rise}: ${amount('riseCPerH', facts.riseCPerH, units)}`,
    `${firing.hold}: ${amount('fireHoldMin', facts.holdMin, units)}`,
  ]
}

function kilnLines(formats: Formats, w: KilnWords, { chamber, shelves, posts }: KilnFacts): string[] {
  const across = chamber.kind === 'round' ? chamber.diameterMm : chamber.widthMm
  const stock = shelves.map((shelf) => w.shelves[shelf.kind](shelf.count)).join(', ')
  return [
    w.line(w[chamber.kind], formats.mm(across), formats.mm(chamber.heightMm), stock),
    posts.map(({ lengthMm, count }) => `${w.posts(formats.mm(lengthMm))}: ${count}`).join(', '),
  ]
}
