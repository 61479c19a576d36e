import type { Warning } from '../../table/advice/warnings.ts'
import type { Table } from '../../table/model/state.ts'
import type { BenchWords } from '../../words/bench.ts'
import type { Formats } from '../../words/format.ts'
import { useBench } from '../bench-app.ts'
import { isGrave } from '../text/pot-text.ts'

/** The worst of the warnings, and how many more there are. */
export function WarningLine({ warnings }: { readonly warnings: readonly Warning[] }) {
  const { table, words, formats } = useBench()
  const [first, ...more] = warnings
  return first ? (
    <p class={isGrave(first) ? 'alarm' : 'strong'}>
      {warningText(words.value, formats.value, table.value, first)}
      {more.length > 0 ? <span class="soft"> {words.value.warning.more(more.length)}</span> : null}
    </p>
  ) : null
}

/** One warning in one line, with its remedy where there is one. */
export function warningText(words: BenchWords, formats: Formats, table: Table, warning: Warning): string {
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
      const where = warning.overlap ? `${words.zone.overlap}, ` : ''
      const said = where + (warning.grade === 'over' ? w.runOver : w.runNear)(formats.mm(warning.roomMm))
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
