import { useMemo } from 'preact/hooks'
import type { Pair } from '../../table/fired/pairs.ts'
import { type GlazeResults, potsWith, resultsWith } from '../../table/opening/of-glaze.ts'
import { Swatch } from '../../ui/swatch.tsx'
import { useBucketWords } from '../desk/bucket-words.ts'
import { DeskHead } from '../desk/head.tsx'
import { FiredRows } from './fired-rows.tsx'
import { figure, tallyText, timesText, useOpening } from './opening-app.ts'
import { useBackWords, useLater } from './plot-part.tsx'
import '../desk/kiln.css'
import './opening.css'
import './back.css'

interface ResultsProps {
  readonly bucketId: string
  readonly underId?: string | undefined
}

/** What the fire has shown of a glaze, or of it over another, on one page: how it ran, what went wrong, the pots. */
export function Results({ bucketId, underId }: ResultsProps) {
  const { table, words, go } = useOpening()
  const w = useBackWords().results
  const { pots, buckets, tiles, taken } = table.value
  const subject = underId === undefined ? { bucketId } : { bucketId, underId }
  const carriers = useMemo(() => potsWith(table.value, subject), [pots, bucketId, underId])
  const made = useLater(
    () => resultsWith(table.value, subject),
    [pots, buckets, tiles, taken, bucketId, underId],
  )
  const tally = useMemo(() => tallyText(words.value, carriers), [carriers])
  const facts = (id: string | undefined) =>
    id === undefined ? undefined : (table.value.buckets[id] ?? table.value.removed?.[id])?.facts
  const [over, under] = [facts(bucketId), facts(underId)]
  const title = under
    ? words.value.opening.taught.over(over?.name ?? '', under.name)
    : (over?.name ?? w.unknown)
  return (
    <div class="desk">
      <DeskHead
        title={title}
        under={words.value.opening.story.count(carriers.length, carriers.length)}
        back={underId === undefined ? { at: 'fired' } : { at: 'results', bucketId }}
      />
      <main class="desk-main-part">
        <p class="open-glazes">
          {under ? <Swatch pattern={under.pattern} letter={under.letter} size={48} /> : null}
          {over ? <Swatch pattern={over.pattern} letter={over.letter} size={48} /> : null}
        </p>
        <p class="kiln-big figures">{tally === '' ? words.value.opening.story.none : tally}</p>
        {made && over ? <Told results={made} /> : null}
        {made && made.pairs.length > 0 ? (
          <ul class="back-pairs">
            {made.pairs.map((pair) => (
              <li key={`${pair.overId} ${pair.underId}`}>
                <button
                  type="button"
                  class="desk-second"
                  onClick={() => go({ at: 'results', bucketId: pair.overId, underId: pair.underId })}
                >
                  {words.value.opening.taught.over(
                    facts(pair.overId)?.name ?? '',
                    facts(pair.underId)?.name ?? '',
                  )}
                  <small class="figures">
                    <PairIs pair={pair} />
                  </small>
                </button>
              </li>
            ))}
          </ul>
        ) : null}
        <FiredRows pots={carriers} />
      </main>
    </div>
  )
}

/** What all of it comes to, in a few lines. */
function Told({ results }: { readonly results: GlazeResults }) {
  const { words, formats, go } = useOpening()
  const w = words.value.opening
  const { factor, limit, pair } = results
  return (
    <>
      {pair ? (
        <p class="figures">
          <PairIs pair={pair} />
        </p>
      ) : null}
      {factor && factor.results.length > 0 ? (
        <p class="figures">
          {w.taught.runs(timesText(words.value, factor.factor.likely))},{' '}
          {w.taught.range(figure(factor.factor.low), figure(factor.factor.high), factor.results.length)}
          {factor.cone === undefined ? '' : `. ${w.taught.ofCone(factor.cone)}`}
        </p>
      ) : null}
      {limit ? (
        <p class="figures">
          {(pair ? w.limits.bothCrawl : w.limits.crawls)(formats.value.coat(limit.limit.mm.likely))}
        </p>
      ) : null}
      {factor || limit ? (
        <button type="button" class="key" onClick={() => go({ at: 'taught' })}>
          {w.taught.title}
        </button>
      ) : null}
    </>
  )
}

function PairIs({ pair }: { readonly pair: Pair }) {
  const w = useBucketWords().pairs
  return <>{w[pair.is](pair.is === 'went-wrong' ? pair.wrong : pair.proved)}</>
}
