import type { Remedy } from '../../table/advice/remedies.ts'
import type { Table } from '../../table/model/state.ts'
import type { Formats } from '../../words/format.ts'
import type { LateWords } from '../../words/late.ts'

export interface RemedyText {
  readonly what: string
  readonly to: string
}

/** What a remedy does, and what it comes to. `glaze` names the coat that is changed. */
export function remedyText(
  words: LateWords,
  formats: Formats,
  table: Table,
  glaze: string,
  remedy: Remedy,
): RemedyText {
  const w = words.remedy
  switch (remedy.is) {
    case 'edge':
      return {
        what: w.edge(glaze, formats.mm(remedy.edgeUpMm).replace(' ', '\u00a0')),
        to: w.reaches[remedy.reaches],
      }
    case 'seconds':
      return { what: w.seconds(glaze, remedy.coat.holdS), to: w.reaches[remedy.reaches] }
    case 'skip':
      return { what: w.skip(glaze), to: w.reaches[remedy.reaches] }
    case 'stack':
      return { what: w.stack(table.stacks[remedy.stackId]?.name ?? ''), to: w.reaches[remedy.reaches] }
    case 'slab':
      return { what: w.slab, to: remedy.ml < 0.05 ? '' : w.slabMl(Math.ceil(remedy.ml)) }
  }
}
