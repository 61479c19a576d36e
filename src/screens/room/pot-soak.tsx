import { useState } from 'preact/hooks'
import type { BoardFacts } from '../../../shared/nouns.ts'
import { readSoak, soakSecondsFor, timesAssumed } from '../../table/forecast/readings.ts'
import { potsOnTable } from '../../table/model/plan.ts'
import type { PotState } from '../../table/model/state.ts'
import { Choice } from '../../ui/choice.tsx'
import { More } from '../../ui/more.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, useEntry } from '../desk/entry-field.tsx'
import { nameOf } from '../text/pot-text.ts'

/** Pots to choose from: any of them does. */
const OFFERED = 8

/** Dry, bare and of the board's own clay. */
const tells = ({ dips, waxedAt, damp, washedAt, facts }: PotState): boolean =>
  dips.length === 0 && [waxedAt, damp, washedAt, facts.absorption].every((of) => of === undefined)

/** The clay from one minute: a pot weighed dry and after seconds in water. */
export function PotSoak() {
  const { table, words } = useDesk()
  const w = words.value.desk.measured.clay
  const pots = potsOnTable(table.value).filter(tells).slice(0, OFFERED)
  const [chosen, setChosen] = useState<string>()
  const pot = pots.find(({ facts }) => facts.potId === chosen) ?? pots[0]
  if (!pot) return null
  return (
    <More label={w.soak}>
      <p class="help">{w.soakHelp}</p>
      <Choice
        label={w.pot}
        options={pots.map((of) => ({ value: of.facts.potId, label: `${nameOf(words.value, of)}` }))}
        value={pot.facts.potId}
        onChoose={setChosen}
      />
      <Weighed key={pot.facts.potId} pot={pot} />
    </More>
  )
}

function Weighed({ pot }: { readonly pot: PotState }) {
  const { table, words, act } = useDesk()
  const w = words.value.desk.measured.clay
  const { board } = table.value
  const dry = useEntry('grams', undefined, true)
  const under = useEntry('tileS', soakSecondsFor(table.value, pot))
  const wet = useEntry('grams', undefined, true)
  const [dryG, seconds, wetG] = [dry.value, under.value, wet.value]
  const all = dryG !== undefined && seconds !== undefined && wetG !== undefined
  const found = all ? readSoak(table.value, pot, { dryG, wetG, seconds }) : undefined
  const said =
    found?.is === 'suction'
      ? w.drinks(timesAssumed(found.sorptivityMmPerSqrtS, board.absorption))
      : found?.is === 'full'
        ? w.holds(`${Math.round(found.absorption * 1000) / 10}`)
        : undefined
  /** The pot that told it has to dry, as one from under the tap: a wet foot makes hot wax spit. */
  const take = (clay: Partial<BoardFacts>) => {
    act({ do: 'set-board', board: { ...board, ...clay } })
    act({ do: 'set-pot', pot: { ...pot.facts, bisqueWater: 'washed' } })
  }
  return (
    <>
      <div class="fields">
        <EntryField entry={dry} label={w.dry} />
        <EntryField entry={under} label={w.under} />
        <EntryField entry={wet} label={w.wet} />
      </div>
      {all && !found ? <p class="alarm">{w.never}</p> : null}
      {found?.is === 'little' || found?.is === 'between' ? <p class="alarm">{w[found.is]}</p> : null}
      {said ? (
        <div class="taken">
          <strong class="figures">{said}</strong>
          <button
            type="button"
            class="key"
            onClick={() => {
              if (found?.is === 'suction') take({ sorptivityMmPerSqrtS: found.sorptivityMmPerSqrtS })
              if (found?.is === 'full') take({ absorption: found.absorption })
            }}
          >
            {words.value.desk.measured.air.take}
          </button>
        </div>
      ) : null}
    </>
  )
}
