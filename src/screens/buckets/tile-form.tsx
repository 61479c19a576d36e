import { useState } from 'preact/hooks'
import type { StripeFacts } from '../../../shared/nouns.ts'
import { firingOf, USUAL_FIRING } from '../../table/firing/firing.ts'
import { doseOfAll } from '../../table/firing/glaze-flow.ts'
import { decimal } from '../../words/number.ts'
import { refusalText } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, type NumberEntry, refusalBeside, useEntry } from '../desk/entry-field.tsx'
import { FiringFields, useFiring } from '../desk/firing-fields.tsx'
import { Alarm } from '../desk/save.tsx'

/** Height of a stripe that keeps the sum simple: a run of up to half of it. Common practice, no source. */
const USUAL_BAND_MM = 60
const MOST = 3

interface StripeEntry {
  readonly dry: NumberEntry
  readonly run: NumberEntry
  readonly longest: NumberEntry
}

function useStripe(): StripeEntry {
  return {
    dry: useEntry('dryMm', undefined),
    run: useEntry('runMm', undefined),
    longest: useEntry('longestMm', undefined, true),
  }
}

/** A stripe whose fields can all be stored. */
function stripeOf({ dry, run, longest }: StripeEntry, bandMm: number | undefined): StripeFacts[] {
  if (dry.value === undefined || run.value === undefined || bandMm === undefined || !longest.ok) return []
  const facts = { dryMm: dry.value, bandMm, runMm: run.value }
  return [longest.value === undefined ? facts : { ...facts, longestMm: longest.value }]
}

/** One fired tile with up to three stripes. Nothing is stored until all of it is right. */
export function TileForm({
  bucketId,
  underId,
}: {
  readonly bucketId: string
  readonly underId?: string | undefined
}) {
  const { table, words, act } = useDesk()
  const w = words.value.desk.melt.tile
  const [round, setRound] = useState(0)
  return (
    <section class="tile-form">
      <h2>{w.make}</h2>
      <p class="help">
        {w.how} {underId === undefined ? null : w.howPair}
      </p>
      <p class="caution">{w.care}</p>
      <Measured
        key={round}
        keep={(tile) => {
          const refusal = act({
            do: 'read-tile',
            tile: { bucketId, ...(underId === undefined ? {} : { underId }), ...tile },
          })
          if (!refusal) setRound(round + 1)
          return refusal
        }}
        start={firingOf(table.value) ?? USUAL_FIRING}
      />
    </section>
  )
}

type Kept = Parameters<ReturnType<typeof useDesk>['act']>[0]
type Tile = Pick<Extract<Kept, { do: 'read-tile' }>['tile'], 'firing' | 'stripes'>

interface MeasuredProps {
  readonly start: Tile['firing']
  readonly keep: (tile: Tile) => ReturnType<ReturnType<typeof useDesk>['act']>
}

function Measured({ start, keep }: MeasuredProps) {
  const { words } = useDesk()
  const w = words.value.desk.melt.tile
  const [count, setCount] = useState(1)
  const [said, setSaid] = useState<string>()
  const [begun] = useState(start)
  const firing = useFiring(begun)
  const band = useEntry('bandMm', USUAL_BAND_MM)
  const stripes = [useStripe(), useStripe(), useStripe()].slice(0, count)
  const ready = stripes.flatMap((stripe) => stripeOf(stripe, band.value))
  const gives =
    ready.length === count
      ? doseOfAll([{ tileId: '', bucketId: '', firing: begun, stripes: ready.map(bounded) }], undefined)
      : undefined
  const save = () => {
    const right = [band, ...stripes.flatMap(({ dry, run, longest }) => [dry, run, longest])]
      .map((entry) => entry.check())
      .every(Boolean)
    const fired = firing.read()
    if (!right || !fired) return
    const refusal = keep({ firing: fired, stripes: ready })
    if (!refusal) return
    const late = stripes.filter(
      ({ run, longest }) => (longest.value ?? Number.POSITIVE_INFINITY) < (run.value ?? 0),
    )
    if (
      !refusalBeside(
        words.value,
        refusal,
        late.map(({ longest }) => longest),
      )
    )
      setSaid(refusalText(words.value, refusal))
  }
  return (
    <>
      {stripes.map(({ dry, run, longest }, i) => (
        <fieldset key={i}>
          <legend>{w.stripeOf(i + 1)}</legend>
          <div class="fields">
            <EntryField entry={dry} label={w.dry} />
            <EntryField entry={run} label={w.run} />
            <EntryField entry={longest} label={w.longest} />
            {i === 0 ? <EntryField entry={band} label={w.band} help={w.bandHelp} /> : null}
          </div>
        </fieldset>
      ))}
      <div class="pair">
        <button type="button" class="key" disabled={count === MOST} onClick={() => setCount(count + 1)}>
          {w.more}
        </button>
        <button type="button" class="key" disabled={count === 1} onClick={() => setCount(count - 1)}>
          {w.less}
        </button>
      </div>
      <h2>{w.firing}</h2>
      <FiringFields entry={firing} />
      {gives ? (
        <p class="strong figures">{w.gives(decimal(gives.likelyPerMm, gives.likelyPerMm < 10 ? 1 : 0))}</p>
      ) : null}
      <Alarm said={said} />
      <button type="button" class="desk-main" onClick={save}>
        {w.keep}
      </button>
    </>
  )
}

/** A drip shorter than the mean run is refused when it is kept; until then the mean stands for it. */
const bounded = (stripe: StripeFacts): StripeFacts =>
  stripe.longestMm === undefined ? stripe : { ...stripe, longestMm: Math.max(stripe.runMm, stripe.longestMm) }
