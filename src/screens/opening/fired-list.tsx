import { useMemo, useState } from 'preact/hooks'
import { firedOf } from '../../table/fired/fired-pot.ts'
import { answers, firedPots } from '../../table/opening/story.ts'
import { Swatch } from '../../ui/swatch.tsx'
import { DeskHead } from '../desk/head.tsx'
import { FiredRows, useFiredTexts } from './fired-rows.tsx'
import { useOpening } from './opening-app.ts'
import './opening.css'

/** All fired pots, found by number, glaze, stack, place or month; what is known of a glaze, and the plots. */
export function FiredList() {
  const { table, words, go } = useOpening()
  const w = words.value.opening.story
  const [search, setSearch] = useState('')
  const textsOf = useFiredTexts()
  const pots = useMemo(() => firedPots(table.value), [table.value.pots])
  const hits = useMemo(
    () =>
      search.trim() === ''
        ? pots
        : pots.filter((pot) => {
            const { month, found } = textsOf(pot)
            const stuck = firedOf(pot).found?.stuck ? words.value.opening.stuckTitle : ''
            return answers(table.value, pot, search, `${month} ${found} ${stuck}`)
          }),
    [pots, search],
  )
  return (
    <div class="desk">
      <DeskHead title={w.title} under={w.count(hits.length, pots.length)} back={{ at: 'board' }} />
      <main class="desk-main-part">
        {pots.length > 0 ? (
          <ul class="open-by-glaze">
            {Object.values(table.value.buckets).map(({ facts: { bucketId, pattern, letter, name } }) => (
              <li key={bucketId}>
                <button
                  type="button"
                  class="key"
                  aria-label={w.resultsOf(name)}
                  onClick={() => go({ at: 'results', bucketId })}
                >
                  <Swatch pattern={pattern} letter={letter} size={34} /> {name}
                </button>
              </li>
            ))}
            <li>
              <button type="button" class="key" onClick={() => go({ at: 'plots' })}>
                {w.plots}
              </button>
            </li>
          </ul>
        ) : null}
        <label class="open-search">
          <span>{w.search}</span>
          <input
            type="search"
            enterkeyhint="search"
            autocomplete="off"
            value={search}
            onInput={(event) => setSearch(event.currentTarget.value)}
          />
        </label>
        {pots.length === 0 ? <p>{w.none}</p> : hits.length === 0 ? <p>{w.noHit}</p> : null}
        <FiredRows key={search} pots={hits} />
        <button type="button" class="desk-second" onClick={() => go({ at: 'elsewhere' })}>
          {words.value.opening.elsewhere}
        </button>
      </main>
    </div>
  )
}
