import { useMemo, useState } from 'preact/hooks'
import type { CoatFacts } from '../../../shared/nouns.ts'
import { againOf, counted } from '../../table/fired/again.ts'
import type { PotState } from '../../table/model/state.ts'
import { Alarm } from '../desk/save.tsx'
import { amount } from '../text/amounts.ts'
import { coverText } from '../text/pot-text.ts'
import { openingRefusal, useOpening } from './opening-app.ts'

type Coat = Extract<ReturnType<typeof againOf>, { readonly coats: unknown }>['coats'][number]
/** Part of a wait that nobody would notice. */
const NOTICED = 0.05

/** That one again: what its coats take on a pot of the same make today, and what is not as it was then. */
export function Again({ pot }: { readonly pot: PotState }) {
  const { table, now, words, formats, act, go } = useOpening()
  const w = words.value.opening.once
  const [said, setSaid] = useState<string>()
  const again = useMemo(() => againOf(table.value, pot, now.peek()), [table.value, pot])
  const nameOf = (bucketId: string) => table.value.buckets[bucketId]?.facts.name ?? ''
  if ('why' in again)
    return (
      <p>
        {again.why === 'unsure'
          ? w.unsure
          : w.noBucket(table.value.removed?.[again.bucketId]?.facts.name ?? '')}
      </p>
    )
  const { units } = table.value.settings
  const { plan } = again
  const f = formats.value
  const seconds = (holdS: number) => words.value.bench.seconds(holdS)
  const span = (min: number) => f.span(min * 60_000)
  /** A wait is as then while nobody would notice. */
  const wait = ({ afterMin, waitedMin }: Coat): string =>
    span(afterMin) === span(waitedMin) || Math.abs(afterMin - waitedMin) <= NOTICED * waitedMin
      ? w.waitAsThen(span(afterMin))
      : w.wait(span(afterMin), span(waitedMin))
  const nearest = ({ likelyMm, wantedMm, wouldGramsPerMl }: Coat): string =>
    [
      (likelyMm < wantedMm ? w.atMost : w.atLeast)(f.coat(likelyMm)),
      wouldGramsPerMl === null ? '' : w.would(f.density(wouldGramsPerMl)),
    ].join(' ')
  const line = (one: (typeof again.differences)[number]): string => {
    switch (one.what) {
      case 'wall':
        return w.wall(f.mm(one.was), f.mm(one.now))
      case 'absorption':
        return w.drinks(amount('absorption', one.was, units), amount('absorption', one.now, units))
      case 'bisque':
        return w.bisque(one.was, one.now)
      case 'density':
        return w.density(nameOf(one.glazeId), f.density(one.was), f.density(one.now))
      case 'fill':
        return w.fill(nameOf(one.glazeId))
      case 'slab':
        return w.slab(one.was)
      case 'heat':
        return w.heat(degrees(Math.abs(one.overK), units), one.overK > 0)
    }
  }
  /** A new pot of the same make with these coats, on the next free place. */
  const make = (coats: readonly CoatFacts[], slab: boolean) => {
    const { potId: _own, number: _number, place: _place, lidOf: _jar, ...like } = pot.facts
    const before = new Set(Object.keys(table.peek().pots))
    const refusal = act({ do: 'set-pot', pot: like })
    const potId = Object.keys(table.peek().pots).find((id) => !before.has(id))
    if (refusal || potId === undefined) {
      if (refusal) setSaid(openingRefusal(words.value, f, refusal))
      return
    }
    act({ do: 'set-plan', potId, coats })
    if (slab) act({ do: 'set-slab', potId, slab })
    go({ at: 'pot', potId })
  }
  return (
    <>
      <ol class="open-story">
        {again.coats.map((coat, i) => (
          <li key={coat.dipId}>
            <strong class="figures">{seconds(counted(coat.holdS))}</strong>
            <span class="figures">
              {nameOf(coat.bucketId)}, {coverText(words.value, f, coat.cover)}{' '}
              {w.instead(seconds(coat.doneS), f.coat(coat.wantedMm))}
              {i === 0 ? null : (
                <>
                  <br />
                  <strong>{wait(coat)}</strong>
                </>
              )}
              {coat.meets ? null : <strong class="alarm"> {nearest(coat)}</strong>}
            </span>
          </li>
        ))}
      </ol>
      {again.differences.length > 0 ? (
        <ul class="figures">
          {again.differences.map((one, i) => (
            <li key={i}>{line(one)}</li>
          ))}
        </ul>
      ) : plan ? (
        <p>{w.same}</p>
      ) : null}
      {again.faults.length > 0 ? (
        <p class="alarm">
          {w.faults(again.faults.map((fault) => words.value.opening.fault[fault]).join(', '))}
        </p>
      ) : null}
      <Alarm said={said} />
      {!plan ? (
        <p class="alarm">{w.cannot}</p>
      ) : again.ran ? (
        <>
          <p class="alarm">{w.ran[again.ran]}</p>
          <button type="button" class="desk-main" onClick={() => make(plan, true)}>
            {w.onSlab}
          </button>
          <button type="button" class="desk-second" onClick={() => make(plan, false)}>
            {w.make}
          </button>
        </>
      ) : (
        <button type="button" class="desk-main" onClick={() => make(plan, false)}>
          {w.make}
        </button>
      )}
    </>
  )
}

/** A difference of temperatures, which has no zero of its own. */
const degrees = (kelvins: number, units: 'metric' | 'us'): string =>
  units === 'us' ? `${Math.round(kelvins * 1.8)} °F` : `${Math.round(kelvins)} °C`
