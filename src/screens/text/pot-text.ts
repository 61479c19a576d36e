import type { Caution, CoverFacts } from '../../../shared/nouns.ts'
import type { Warning } from '../../table/advice/warning.ts'
import type { Half } from '../../table/model/halves.ts'
import { lastDip } from '../../table/model/plan.ts'
import { EDGE_UP_MM } from '../../table/model/range.ts'
import type { HitLine, PotState, Table } from '../../table/model/state.ts'
import type { Words } from '../../words/bench.ts'
import type { Formats } from '../../words/format.ts'
import type { Name } from '../../words/name.ts'

/** What a coat covers, in a few letters; of two side dips the later takes the other half. */
export function coverText(words: Words, formats: Formats, cover: CoverFacts, half?: Half): string {
  const said = words.bench.cover
  // A number and its unit stay on one line.
  const mm = (length: number) => formats.mm(length).replaceAll(' ', '\u00a0')
  switch (cover.kind) {
    case 'full':
      return said.full
    case 'toSkirt':
      return said.toSkirt
    case 'inside':
      return said.inside
    case 'side':
      return half === 1 ? said.otherSide : said.side
    case 'downTo':
      return said.downTo(mm(cover.edgeUpMm))
    case 'upTo':
      return cover.edgeUpMm >= EDGE_UP_MM.most ? said.outside : said.upTo(mm(cover.edgeUpMm))
    case 'collar':
      return said.collar(mm(cover.depthMm))
  }
}

const GRAVE: ReadonlySet<Warning['kind']> = new Set([
  'build',
  'run',
  'level',
  'thin',
  'neck',
  'dew',
  'held',
  'repair',
  'fit',
  'ran',
  'crawled',
])

const QUIET: ReadonlySet<string> = new Set(['unknown', 'near', 'likely'])

/** Whether a warning is said in the warning colour. */
export const isGrave = (warning: Warning): boolean =>
  (GRAVE.has(warning.kind) || (warning.kind === 'pair' && warning.is === 'went-wrong')) &&
  !('grade' in warning && QUIET.has(warning.grade))

/** What a glaze is marked as holding, in one line; nothing where it is not marked. */
export const cautionText = (words: Words, cautions: readonly Caution[]): string | undefined =>
  cautions.length > 0 ? words.bench.marked(cautions.map((what) => words.caution[what]).join(', ')) : undefined

/** So many are named where the glaze is on the hands; all of them at the stir, before its sheet is read. */
const NAMED = 2

/** The same in short, where the glaze is on the hands; of a coat on a food side that nobody knows it to be safe. */
export const glovesText = (
  words: Words,
  cautions: readonly Caution[],
  onFoodSide = false,
): string | undefined =>
  cautions.length === 0
    ? undefined
    : words.bench.gloves(
        [
          ...cautions.slice(0, NAMED).map((what) => words.caution[what]),
          ...(cautions.length > NAMED ? [words.bench.andMore] : []),
        ].join(', '),
      ) + (onFoodSide ? ` ${words.bench.foodSide}` : '')

/** What is on the pot still wet in the hands, where the glaze of the card's bucket does not ask for gloves by itself. */
export function wetGloves(
  words: Words,
  { buckets }: Table,
  pot: PotState | undefined,
  bucketId: string,
): string | undefined {
  const of = (id: string | undefined) => buckets[id ?? '']?.facts.cautions ?? []
  const [what] = pot ? of(lastDip(pot)?.bucketId) : []
  return pot && what && of(bucketId).length === 0
    ? words.bench.wetGloves(nameOf(words, pot), words.caution[what])
    : undefined
}

/** What a pot is called: its number, and which piece of it where there are two. */
export const nameOf = (words: Words, pot: PotState | undefined): Name =>
  pot?.facts.lidOf === undefined ? (pot?.facts.number ?? '') : words.bench.lid(pot.facts.number)

export const placeOf = (pot: PotState): string => `${pot.facts.place.board} ${pot.facts.place.spot}`

/** A hit in the past, with the pots it was of. */
export function hitText(words: Words, table: Table, hit: Partial<HitLine>): string {
  const [first, second, ...more] = hit.potIds ?? [hit.potId ?? '']
  const named = [first, second].map((potId) => nameOf(words, table.pots[potId ?? ''])).filter(Boolean)
  const pots = [...named, ...(more.length > 0 ? [`+${more.length}`] : [])].join(', ')
  return [pots, hitName(words, hit)].filter(Boolean).join(' ')
}

/** What a hit did, in a word or two; undefined where no card has a word for it. */
export const hitName = (
  { hits }: Pick<Words, 'hits'>,
  { kind, takenIn }: Partial<HitLine>,
): string | undefined => hits[takenIn ? 'taken-in' : (kind ?? '')]
