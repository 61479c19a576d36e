import { useState } from 'preact/hooks'
import { potsOnTable } from '../../table/model/plan.ts'
import type { DipState, PotState, Table } from '../../table/model/state.ts'
import { BROKEN_WORDS } from '../../words/broken.ts'
import { useApp } from '../app.ts'
import { nameOf, placeOf } from '../text/pot-text.ts'
import './broken.css'

/** In place of a screen that failed. The clocks and a running count go on, from what the table alone says. */
export function Broken({ again }: { readonly again: () => void }) {
  const { table, go, backUp, passOnFaults } = useApp()
  const [said, setSaid] = useState<string>()
  const w = BROKEN_WORDS[table.value.settings.language]
  const tell = (job: () => Promise<unknown>) => () => {
    job().catch(() => setSaid(w.failed))
  }
  return (
    <main class="desk desk-main-part broken">
      <Running />
      <h1>{w.title}</h1>
      <p>{w.text}</p>
      <button type="button" class="desk-main" onClick={again}>
        {w.again}
      </button>
      {(['board', 'bench'] as const).map((at) => (
        <button
          key={at}
          type="button"
          class="desk-second"
          onClick={() => {
            go({ at })
            again()
          }}
        >
          {at === 'board' ? w.board : w.bench}
        </button>
      ))}
      <button type="button" class="desk-second" onClick={tell(backUp)}>
        {w.backUp}
      </button>
      <button type="button" class="desk-second" onClick={tell(passOnFaults)}>
        {w.passOn}
      </button>
      {said ? (
        <p class="alarm" role="alert">
          {said}
        </p>
      ) : null}
    </main>
  )
}

interface OnPot {
  readonly pot: PotState
  readonly dip: DipState
}

const latestDips = (table: Table): readonly OnPot[] =>
  potsOnTable(table)
    .flatMap((pot) => pot.dips.slice(-1).map((dip) => ({ pot, dip })))
    .sort((a, b) => b.dip.outAt - a.dip.outAt)

/** So many clocks fit under a count. */
const CLOCKS = 8

/** The count under way, and how long ago each pot came out. */
function Running() {
  const { table, now, words, formats, act } = useApp()
  const w = words.value
  const dips = latestDips(table.value)
  const t = now.value
  const count = dips.find(({ dip }) => t >= dip.tappedAt && t < dip.outAt)
  const out = dips.filter(({ dip }) => t >= dip.outAt).slice(0, CLOCKS)
  return (
    <>
      {count ? <Count {...count} stop={() => void act({ do: 'stop', dipId: count.dip.dipId })} /> : null}
      <ul class="broken-clocks figures">
        {out.map(({ pot, dip }) => (
          <li key={dip.dipId}>
            {BROKEN_WORDS[table.value.settings.language].out(
              nameOf(w, pot),
              placeOf(pot),
              formats.value.span(t - dip.outAt),
            )}
          </li>
        ))}
      </ul>
    </>
  )
}

function Count({ pot, dip, stop }: OnPot & { readonly stop: () => void }) {
  const { frameNow, words } = useApp()
  const w = words.value
  const elapsedS = Math.floor((frameNow.value - dip.underAt) / 1000)
  return (
    <button type="button" class="broken-count" onClick={stop}>
      <span>{nameOf(w, pot)}</span>
      <strong class="figures">{Math.max(0, elapsedS)}</strong>
      <span class="figures">{w.bench.of(dip.holdS)}</span>
      <span>{w.bench.stopBar}</span>
    </button>
  )
}
