import type { LoadPlan } from '../../table/load/proposal.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { potsOnTable } from '../../table/model/plan.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { KilnMain } from './kiln-main.tsx'
import { thingName, useBar, useLoad } from './load-app.ts'
import { leftOut, usePropose } from './propose.ts'

type Would = LoadPlan['leftOut'][number]['would'][number]

/** What stays out of this load by name, why, and what would make it fit. */
export function LeftOutPage({ load, close }: { readonly load: LoadState; readonly close: () => void }) {
  const { table, words, formats, act } = useLoad()
  const { asking, propose } = usePropose()
  const w = words.value.desk.shelf
  const { loadId } = load
  useBar(() => void propose(loadId).then(close))
  const name = (key: string) => thingName(words.value, table.value, key)
  const mm = (value: number | null) => formats.value.mm(value ?? 0)
  const out = leftOut.get(loadId)?.leftOut ?? []
  const later = potsOnTable(table.value).filter(({ later }) => later)
  const why = ({ why: code, mostMm }: (typeof out)[number]): string => {
    const text = w.why[code]
    return typeof text === 'function' ? text(mm(mostMm)) : text
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
        {out.map((one) => (
          <div key={one.id}>
            <p>
              <strong>{name(one.id)}</strong> {why(one)}
            </p>
            {one.would.map((way, i) =>
              way.kind === 'slab' ? (
                <button
                  key={i}
                  type="button"
                  class="key"
                  onClick={() => act({ do: 'set-slab', potId: one.id, slab: true })}
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
        {out.some(({ why: code }) => code === 'wet') ? (
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
