import type { Warning } from '../../table/advice/warning.ts'
import type { Table } from '../../table/model/state.ts'
import { PressButton } from '../../ui/press.tsx'
import type { Formats } from '../../words/format.ts'
import { LATE_WORDS, type LateWords } from '../../words/late.ts'
import { decimal } from '../../words/number.ts'
import { useApp } from '../app.ts'
import { isGrave } from '../text/pot-text.ts'

export interface WarningLineProps {
  /** The one that is said on the card. */
  readonly line: Warning | undefined
  /** All that is known against the coat, that one among them. */
  readonly warnings: readonly Warning[]
}

/** The one warning of a card, and the key to all that is known against the coat. */
export function WarningLine({ line, warnings }: WarningLineProps) {
  const { table, formats, bench } = useApp()
  const read = () => {
    bench.sheet.value = 'warnings'
  }
  const w = LATE_WORDS[table.value.settings.language].warning
  const more = line ? warnings.length - 1 : warnings.length
  return (
    <PressButton class="warning-key" onPress={read}>
      {line ? (
        <span class={isGrave(line) ? 'alarm' : 'strong'}>
          {warningText(formats.value, table.value, line, 'short')}
        </span>
      ) : null}
      <span class="warning-more">{line ? w.more(more) : w.notes(more)}</span>
    </PressButton>
  )
}

/** One warning in one line; in full with its remedy where there is one. */
export function warningText(
  formats: Formats,
  table: Table,
  warning: Warning,
  told: 'full' | 'short' = 'full',
): string {
  const words = LATE_WORDS[table.settings.language]
  const w = words.warning
  const name = (bucketId: string) => table.buckets[bucketId]?.facts.name ?? bucketId
  const pairName = (over: string, under: string | undefined) =>
    under === undefined ? name(over) : w.overUnder(name(over), name(under))
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
      const where = warning.overlap ? `${words.zone.overlap}: ` : ''
      const room = formats.mm(warning.roomMm)
      const carried = warning.carried ? ` (${w.carried})` : ''
      if (warning.grade === 'near') return `${where}${w.runNear(formats.mm(warning.runMm), room)}${carried}.`
      const edge = warning.edgeUpMm === undefined ? w.catch : w.edge(formats.mm(warning.edgeUpMm))
      return `${where}${w.runOver(room)}${carried}.${told === 'full' ? ` ${edge}.` : ''}`
    }
    case 'thin':
      return thinText(w, formats, table, warning)
    case 'repair':
      return warning.holdS === undefined ? w.repairSkip : w.repair(warning.holdS)
    case 'neck':
      return w.neck
    case 'dew':
      return w.dew(formats.temp(warning.potC), formats.temp(warning.dewC))
    case 'held':
      return w.held(formats.clock(warning.until + table.skewMs))
    case 'level':
      return w.level(formats.mm(warning.levelMm), formats.mm(warning.needsMm))
    case 'density':
      return w.density(formats.density(warning.gramsPerMl), formats.density(warning.targetGramsPerMl))
    case 'pair':
      return w.pair[warning.is](name(warning.over), name(warning.under), words.zone[warning.zone])
    case 'fit':
      return w.fit[warning.misfit]
    case 'crawled':
      return w.crawled(
        `${warning.number}`,
        pairName(warning.glaze, warning.under),
        formats.coat(warning.limitMm),
      )
    case 'ran': {
      const { over, under, factor = 1, used, number, to } = warning
      const [is, was] = [figure(factor), figure(used)]
      return w.ran[to](`${number}`, pairName(over, under), used === 1 ? w.ofTiles(is) : w.thanUsed(is, was))
    }
  }
}

/** A factor in two figures. */
const figure = (factor: number): string => decimal(factor, factor < 1 ? 2 : factor < 10 ? 1 : 0, 0)

/** What comes out now, and from when the wall drinks again. */
function thinText(
  w: LateWords['warning'],
  formats: Formats,
  table: Table,
  { grade, likelyMm, lowerMm, upperMm, again }: Extract<Warning, { kind: 'thin' }>,
): string {
  const [low, high] = [formats.coat(lowerMm), formats.coat(upperMm)]
  const now =
    grade === 'likely'
      ? w.thinLikely(formats.coat(likelyMm), low, high)
      : low === high
        ? w.thinOne(high)
        : w.thin(low, high)
  const later = again && w.thinAgain(formats.coat(again.likelyMm), formats.clock(again.at + table.skewMs))
  return `${now} ${later ?? w.thinWait}`
}
