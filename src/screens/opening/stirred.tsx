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

/** Where a fault may come from: the glazes of a pot that had settled, by letter. */
export function SettledLines({ pot }: { readonly pot: PotState }) {
  const { table, words, formats } = useOpening()
  const letters = new Map<string, Set<string>>()
  for (const dip of coatsOn(pot)) {
    const said = stirredText(words.value, formats.value, dip)
    const { letter } = (table.value.buckets[dip.bucketId] ?? table.value.removed?.[dip.bucketId])?.facts ?? {}
    if (said !== undefined && letter !== undefined)
      letters.set(said, (letters.get(said) ?? new Set()).add(letter))
  }
  return [...letters].map(([said, of]) => (
    <p key={said} class="figures">
      {[...of].join(', ')}: {said}
    </p>
  ))
}
