import { useMemo, useState } from 'preact/hooks'
import { placeIn } from '../../table/opening/queue.ts'
import { answers, endOf, firedPots, namesOn } from '../../table/opening/story.ts'
import { DeskHead } from '../desk/head.tsx'
import { nameOf } from '../text/pot-text.ts'
import { lookedText, useOpening } from './opening-app.ts'
import './opening.css'

/** So many are listed: more are found by another word. */
const LISTED = 60

/** All fired pots, found by number, glaze, stack, place or month. */
export function FiredList() {
  const { table, words, formats, go } = useOpening()
  const w = words.value.opening.story
  const [search, setSearch] = useState('')
  const { language } = table.value.settings
  const { skewMs } = table.value
  const rows = useMemo(() => {
    const month = new Intl.DateTimeFormat(language, { month: 'long', year: 'numeric' })
    return firedPots(table.value).map((pot) => ({
      pot,
      month: month.format(endOf(pot) + skewMs),
      found: lookedText(words.value, formats.value, pot),
    }))
  }, [table.value.pots])
  const hits = rows.filter(({ pot, month, found }) => answers(table.value, pot, search, `${month} ${found}`))
  return (
    <div class="desk">
      <DeskHead title={w.title} under={w.count(hits.length, rows.length)} back={{ at: 'board' }} />
      <main class="desk-main-part">
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
        {rows.length === 0 ? <p>{w.none}</p> : hits.length === 0 ? <p>{w.noHit}</p> : null}
        <ul class="open-fired">
          {hits.slice(0, LISTED).map(({ pot, month, found }) => (
            <li key={pot.facts.potId}>
              <button type="button" onClick={() => go({ at: 'story', potId: pot.facts.potId })}>
                <strong class="figures">{nameOf(words.value, pot)}</strong>
                <span>
                  {namesOn(table.value, pot)[0] ?? ''}
                  <small class="figures">
                    {[placeIn(table.value, pot), month].filter(Boolean).join(', ')}
                  </small>
                </span>
                <span class="figures">{found}</span>
              </button>
            </li>
          ))}
        </ul>
        {rows.length > 0 ? (
          <button type="button" class="desk-second" onClick={() => go({ at: 'plots' })}>
            {w.plots}
          </button>
        ) : null}
        <button type="button" class="desk-second" onClick={() => go({ at: 'elsewhere' })}>
          {words.value.opening.elsewhere}
        </button>
        {hits.length > LISTED ? <p class="help">{w.more(hits.length - LISTED)}</p> : null}
      </main>
    </div>
  )
}
