import { useEffect, useState } from 'preact/hooks'
import { type LoadPlan, leftOutInput } from '../../table/load/proposal.ts'
import { potsLeftOut } from '../../table/load/to-load.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { potsOnTable } from '../../table/model/plan.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { KILN_PAGE_WORDS } from '../../words/kiln-pages.ts'
import { KilnMain } from '../desk/kiln-main.tsx'
import { useBar } from '../desk/use-bar.ts'
import { thingName, useLoad } from './load-app.ts'

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

interface LeftOutProps {
  readonly load: LoadState
  readonly propose: (loadId: string) => Promise<unknown>
}

/** What stays out of this load by name, why, and what would make it fit. */
export function LeftOutPage({ load, propose }: LeftOutProps) {
  const { table, words, formats, act } = useLoad()
  const w = words.value.desk.shelf
  const pages = KILN_PAGE_WORDS[table.value.settings.language]
  useBar(() => void propose(load.loadId))
  const name = (key: string) => thingName(words.value, table.value, key)
  const mm = (value: number | null) => formats.value.mm(value ?? 0)
  const found = useLeftOut(load)
  // A load without pots needs no cones.
  const riders =
    Object.keys(load.things).length === 0
      ? []
      : [...(found?.keys() ?? [])].filter((key) => key.startsWith('~'))
  const out = [...potsLeftOut(table.value, load).map(({ facts }) => facts.potId), ...riders]
  const later = potsOnTable(table.value).filter(({ later }) => later)
  const why = (key: string): string => {
    if (!found) return '…'
    const one = found.get(key)
    if (!one) return pages.why.fits
    const text = pages.why[one.why]
    return typeof text === 'function' ? text(mm(one.mostMm)) : text
  }
  const would = (one: Would): string => {
    switch (one.kind) {
      case 'posts':
        return pages.would.posts(mm(one.lengthMm))
      case 'aside':
        return pages.would.aside(name(one.potId), one.gains)
      case 'nextFiring':
        return pages.would.nextFiring(one.firing)
      case 'shelf':
        return pages.would.shelf
      case 'slab':
        return pages.would.slab
    }
  }
  // Those of which the same is said are named together; a slab goes under one pot.
  const groups = new Map<string, string[]>()
  for (const key of out) {
    const ways = found?.get(key)?.would ?? []
    const own = ways.some(({ kind }) => kind === 'slab') ? key : ''
    const said = [why(key), ...ways.map(would), own].join('|')
    groups.set(said, [...(groups.get(said) ?? []), key])
  }
  return (
    <>
      <KilnMain>
        {[...groups.values()].map((keys) => (
          <div key={keys.join()}>
            <p>
              <strong>{keys.map(name).join(', ')}</strong> {why(keys[0] ?? '')}
            </p>
            {found?.get(keys[0] ?? '')?.would.map((way, i) =>
              way.kind === 'slab' ? (
                <button
                  key={i}
                  type="button"
                  class="key"
                  onClick={() => act({ do: 'set-slab', potId: keys[0] ?? '', slab: true })}
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
            onClick={() => act({ do: 'set-candling', loadId: load.loadId, candle: true })}
          >
            {w.candle}
          </button>
        ) : null}
        {later.map((pot) => (
          <div key={pot.facts.potId}>
            <p>
              <strong>{name(pot.facts.potId)}</strong> {pages.why.later}
            </p>
            <button
              type="button"
              class="key"
              onClick={() => act({ do: 'put-off', potIds: [pot.facts.potId], later: false })}
            >
              {pages.would.back}
            </button>
          </div>
        ))}
      </KilnMain>
      <KnuckleBar label={w.bar.propose} />
    </>
  )
}
