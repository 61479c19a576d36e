import type { Caution, CoverFacts } from '../../../shared/nouns.ts'
import { LIMITS } from '../../table/limits.ts'
import type { PotState, Table } from '../../table/state.ts'
import type { Warning } from '../../table/warnings.ts'
import type { Name } from '../../words/en.ts'
import type { Formats } from '../../words/format.ts'
import type { Words } from '../../words/index.ts'

/** What a coat covers, in a few letters. */
export function coverText(words: Words, formats: Formats, cover: CoverFacts): string {
  const said = words.bench.cover
  switch (cover.kind) {
    case 'full':
      return said.full
    case 'toSkirt':
      return said.toSkirt
    case 'inside':
      return said.inside
    case 'side':
      return said.side
    case 'downTo':
      return said.downTo(formats.mm(cover.edgeUpMm))
    case 'upTo':
      return cover.edgeUpMm >= LIMITS.edgeUpMm.most ? said.outside : said.upTo(formats.mm(cover.edgeUpMm))
    case 'collar':
      return said.collar(formats.mm(cover.depthMm))
  }
}

const GRAVE: ReadonlySet<Warning['kind']> = new Set([
  'build',
  'run',
  'level',
  'thin',
  'neck',
  'dew',
  'repair',
  'fit',
])

/** Whether a warning is said in the warning colour. */
export const isGrave = (warning: Warning): boolean =>
  (GRAVE.has(warning.kind) || (warning.kind === 'pair' && warning.is === 'went-wrong')) &&
  !('grade' in warning && (warning.grade === 'unknown' || warning.grade === 'near'))

/** One warning in one line, with its remedy where there is one. */
export function warningText(words: Words, formats: Formats, table: Table, warning: Warning): string {
  const w = words.warning
  const name = (bucketId: string) => table.buckets[bucketId]?.facts.name ?? bucketId
  switch (warning.kind) {
    case 'build': {
      const { grade, zone, likelyMm, upperMm, limitMm, remedyS } = warning
      const said = grade === 'over' ? w.over : w.close
      const mm = formats.coat(grade === 'over' ? likelyMm : upperMm)
      const remedy = grade === 'over' ? `. ${remedyS > 0 ? w.seconds(remedyS) : w.skip}` : ''
      return said(words.zone[zone], mm, formats.coat(limitMm)) + remedy
    }
    case 'run': {
      if (warning.grade === 'unknown') return w.runUnknown
      if (warning.slab) return w.runSlab
      const said = (warning.grade === 'over' ? w.runOver : w.runNear)(formats.mm(warning.roomMm))
      const edge = warning.edgeUpMm === undefined ? w.catch : w.edge(formats.mm(warning.edgeUpMm))
      return `${said}. ${edge}${warning.carried ? ` (${w.carried})` : ''}`
    }
    case 'thin':
      return w.thin(
        formats.coat(warning.likelyMm),
        formats.coat(warning.dryMm),
        warning.makeUpS === undefined ? undefined : Math.round(warning.makeUpS * 2) / 2,
      )
    case 'repair':
      return warning.holdS === undefined ? w.repairSkip : w.repair(warning.holdS)
    case 'neck':
      return w.neck
    case 'dew':
      return w.dew(formats.temp(warning.potC), formats.temp(warning.dewC))
    case 'level':
      return w.level(formats.mm(warning.levelMm), formats.mm(warning.needsMm))
    case 'density':
      return w.density(formats.density(warning.gramsPerMl), formats.density(warning.targetGramsPerMl))
    case 'pair':
      return w.pair[warning.is](name(warning.over), name(warning.under), words.zone[warning.zone])
    case 'fit':
      return w.fit[warning.misfit]
  }
}

/** What a glaze is marked as holding, in one line; nothing where it is not marked. */
export const cautionText = (words: Words, cautions: readonly Caution[]): string | undefined =>
  cautions.length > 0
    ? words.warning.caution(cautions.map((what) => words.caution[what]).join(', '))
    : undefined

/** What a pot is called: its number, and which piece of it where there are two. */
export const nameOf = (words: Words, pot: PotState | undefined): Name =>
  pot?.facts.lidOf === undefined ? (pot?.facts.number ?? '') : words.bench.lid(pot.facts.number)

export const placeOf = (pot: PotState): string => `${pot.facts.place.board} ${pot.facts.place.spot}`
