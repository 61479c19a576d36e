import { useState } from 'preact/hooks'
import type { TileFacts } from '../../../shared/nouns.ts'
import { firingOf } from '../../table/firing/firing.ts'
import { doseOfAll, runAt, TELLING_MM } from '../../table/firing/glaze-flow.ts'
import { tilesOf } from '../../table/firing/tiles.ts'
import { Choice } from '../../ui/choice.tsx'
import { Swatch } from '../../ui/swatch.tsx'
import { decimal } from '../../words/number.ts'
import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { amount } from '../text/amounts.ts'
import { TileForm } from './tile-form.tsx'
import './tile.css'

interface TilesProps {
  readonly bucketId: string
  readonly underId?: string | undefined
}

/** What the flow tiles of a glaze, by itself or over another, come to; and the measuring of one more. */
export function Tiles({ bucketId, underId }: TilesProps) {
  const { table, words, go } = useDesk()
  const w = words.value.desk.melt.tile
  const facts = table.value.buckets[bucketId]?.facts
  if (!facts) return null
  const others = Object.values(table.value.buckets).filter((one) => one.facts.bucketId !== bucketId)
  const tiles = tilesOf(table.value, bucketId, underId)
  return (
    <div class="desk">
      <DeskHead title={w.title} under={facts.name} back={{ at: 'buckets', bucketId }}>
        <Swatch pattern={facts.pattern} letter={facts.letter} size={52} />
      </DeskHead>
      <main class="desk-main-part tile-page">
        <Choice
          label={w.on}
          options={[
            { value: '', label: w.alone },
            ...others.map(({ facts: under }) => ({ value: under.bucketId, label: w.over(under.name) })),
          ]}
          value={underId ?? ''}
          onChoose={(under) => go({ at: 'tile', bucketId, ...(under ? { underId: under } : {}) })}
        />
        <Dose tiles={tiles} pair={underId !== undefined} />
        <Fired tiles={tiles} />
        <TileForm key={underId} bucketId={bucketId} underId={underId} />
      </main>
    </div>
  )
}

/** The dose for the firing to come, in words first. */
function Dose({ tiles, pair }: { readonly tiles: readonly TileFacts[]; readonly pair: boolean }) {
  const { table, words, formats } = useDesk()
  const w = words.value.desk.melt.tile
  const planned = firingOf(table.value)
  const dose = doseOfAll(tiles, planned)
  if (!dose) return <p>{pair ? w.noPair : w.none}</p>
  const run = (perMm: number) => formats.value.mm(Math.max(1, runAt(perMm, TELLING_MM)))
  const short = (perMm: number) => decimal(perMm, perMm < 10 ? 1 : 0)
  return (
    <section class="tile-dose">
      <p class="strong figures">
        {w.runs(formats.value.coat(TELLING_MM), run(dose.likelyPerMm), run(dose.highPerMm))}
      </p>
      <p class="help figures">
        {w.spread(short(dose.likelyPerMm), short(dose.lowPerMm), short(dose.highPerMm))},{' '}
        {w.drips(decimal(dose.dripFactor, 1))}
      </p>
      {dose.carried ? (
        <p class="alarm">{w.carried(tiles.at(-1)?.firing.cone ?? '', planned?.cone ?? '')}</p>
      ) : null}
    </section>
  )
}

/** The tiles that are kept, each to be removed. */
function Fired({ tiles }: { readonly tiles: readonly TileFacts[] }) {
  const { table, words, formats, act } = useDesk()
  const w = words.value.desk.melt.tile
  const [removed, setRemoved] = useState(false)
  const { units } = table.value.settings
  return (
    <>
      <ul class="tile-list">
        {tiles.map(({ tileId, firing, stripes }) => (
          <li key={tileId}>
            <p class="figures">
              <strong>{w.fired(firing.cone, amount('riseCPerH', firing.riseCPerH, units))}</strong>
              {firing.holdMin > 0 ? `, ${w.held(amount('fireHoldMin', firing.holdMin, units))}` : null}
              <br />
              {stripes
                .map(({ dryMm, runMm }) => w.stripe(formats.value.coat(dryMm), amount('runMm', runMm, units)))
                .join(', ')}
            </p>
            <button type="button" class="key" onClick={() => setRemoved(!act({ do: 'remove-tile', tileId }))}>
              {w.remove}
            </button>
          </li>
        ))}
      </ul>
      {removed ? (
        <p class="tile-removed" role="status">
          {w.removed}
          <button
            type="button"
            class="key"
            onClick={() => setRemoved(act({ do: 'take-back' }) !== undefined)}
          >
            {words.value.desk.takeBack}
          </button>
        </p>
      ) : null}
    </>
  )
}
