import { coatsOn } from '../../table/model/plan.ts'
import type { DipState, PotState } from '../../table/model/state.ts'
import type { Formats } from '../../words/format.ts'
import type { OpeningWords } from '../../words/opening.ts'
import { useOpening } from './opening-app.ts'

/** Of a coat that went in though its glaze had settled: how long ago that was stirred. */
export function stirredText(
  { opening: { story } }: Pick<OpeningWords, 'opening'>,
  formats: Formats,
  { unstirred, stirredAgoMs }: DipState,
): string | undefined {
  if (!unstirred) return undefined
  return stirredAgoMs === undefined ? story.unstirred : story.stale(formats.span(stirredAgoMs))
}

/** Where a fault may come from: the glazes of a pot that had settled, a line each. */
export function SettledLines({ pot }: { readonly pot: PotState }) {
  const { table, words, formats } = useOpening()
  return coatsOn(pot).map((dip) => {
    const said = stirredText(words.value, formats.value, dip)
    const bucket = table.value.buckets[dip.bucketId] ?? table.value.removed?.[dip.bucketId]
    return said === undefined ? null : (
      <p key={dip.dipId} class="figures">
        {bucket?.facts.name}: {said}
      </p>
    )
  })
}
