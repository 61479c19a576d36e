import { useEffect, useState } from 'preact/hooks'
import { type LoadPlan, leftOutInput, potsLeftOut } from '../../table/load/proposal.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { potsOnTable } from '../../table/model/plan.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { KilnMain } from './kiln-main.tsx'
import { thingName, useBar, useLoad } from './load-app.ts'
import { usePropose } from './propose.ts'

type LeftOut = LoadPlan['leftOut'][number]
type Would = LeftOut['would'][number]

/** Why things are left out of a load as it stands, by their keys, computed anew whenever it changes; undefined until then. */
function useLeftOut(load: LoadState): ReadonlyMap<string, LeftOut> | undefined {
  const { table, now, proposeLoad } = useLoad()
  const { pots, settings } = table.value
  const [found, setFound] = useState<ReadonlyMap<string, LeftOut>>()
  useEffect(() => {
    let gone = false
    setFound(undefined)
    proposeLoad(leftOutInput(table.peek(), load, now.peek())).then(
      ({ leftOut }) => gone || setFound(new Map(leftOut.map((one) => [one.id, one]))),
      () => {},
    )
    return () => {
      gone = true
    }
  }, [load, pots, settings])
  return found
}

/** What stays out of this load by name, why, and what would make it fit. */
export function LeftOutPage({ load, close }: { readonly load: LoadState; readonly close: () => void }) {
  const { table, words, formats, act } = useLoad()
  const { asking, propose } = usePropose()
  const w = words.value.desk.shelf
  const { loadId } = load
  useBar(() => void propose(loadId).then(close))
  const name = (key: string) => thingName(words.value, table.value, key)
  const mm = (value: number | null) => formats.value.mm(value ?? 0)
  const found = useLeftOut(load)
  const riders = [...(found?.keys() ?? [])].filter((key) => key.startsWith('~'))
  const out = [...potsLeftOut(table.value, load).map(({ facts }) => facts.potId), ...riders]
  const later = potsOnTable(table.value).filter(({ later }) => later)
  const why = (key: string): string => {
    if (!found) return '…'
    const one = found.get(key)
    if (!one) return w.why.fits
    const text = w.why[one.why]
    return typeof text === 'function' ? text(mm(one.mostMm)) : text
  }
  const would = (one: Would): string => {
    switch (one.kind) {
      case 'posts':
        return w.would.posts(mm(one.lengthMm))
      case 'aside':
        return w.would.aside(name(one.potId), one.gains)
      case 'nextFiring':
        return w.would.nextFiring
      case 'shelf':
        return w.would.shelf
      case 'slab':
        return w.would.slab
    }
  }
  return (
    <>
      <KilnMain>
        <h2>{w.outTitle}</h2>
        {out.map((key) => (
          <div key={key}>
            <p>
              <strong>{name(key)}</strong> {why(key)}
            </p>
            {found?.get(key)?.would.map((way, i) =>
              way.kind === 'slab' ? (
                <button
                  key={i}
                  type="button"
                  class="key"
                  onClick={() => act({ do: 'set-slab', potId: key, slab: true })}
                >
                  {would(way)}
                </button>
              ) : (
                <p key={i} class="help">
                  {would(way)}
                </p>
              ),
            )}
          </div>
        ))}
        {out.some((key) => found?.get(key)?.why === 'wet') ? (
          <button
            type="button"
            class="key"
            onClick={() => act({ do: 'set-settings', settings: { candle: true } })}
          >
            {w.would.candle}
          </button>
        ) : null}
        {later.map((pot) => (
          <div key={pot.facts.potId}>
            <p>
              <strong>{name(pot.facts.potId)}</strong> {w.why.later}
            </p>
            <button
              type="button"
              class="key"
              onClick={() => act({ do: 'put-off', potIds: [pot.facts.potId], later: false })}
            >
              {w.would.back}
            </button>
          </div>
        ))}
      </KilnMain>
      <KnuckleBar label={asking ? w.bar.wait : w.bar.propose} />
    </>
  )
}
