import { useState } from 'preact/hooks'
import { boardsOf, SPOTS_PER_BOARD } from '../../table/places.ts'
import { potsOnTable } from '../../table/plan.ts'
import { useDesk } from '../desk/app.ts'
import { placeText } from '../desk/said.ts'

const SPOTS = Array.from({ length: SPOTS_PER_BOARD }, (_, i) => i + 1)

/** Order on the boards: tap a pot, then its place. A pot that stands there changes places with it. */
export function Places({ potId, back }: { readonly potId: string; readonly back: () => void }) {
  const { table, words, act } = useDesk()
  const w = words.value.desk.places
  const [hand, setHand] = useState<string | undefined>(potId)
  const pots = potsOnTable(table.value)
  const boards = boardsOf(pots.map(({ facts }) => facts.place))
  const held = hand === undefined ? undefined : table.value.pots[hand]?.facts
  return (
    <div class="desk">
      <header class="desk-head">
        <button type="button" class="desk-back" aria-label={words.value.desk.back} onClick={back}>
          <svg viewBox="0 0 24 24" width="26" height="26" aria-hidden="true">
            <path d="M15 4 L6 12 L15 20" fill="none" stroke="currentColor" stroke-width="3.5" />
          </svg>
        </button>
        <div class="desk-title">
          <h1>{w.title}</h1>
          <p class="soft figures" role="status">
            {held ? w.where(held.number) : w.take}
          </p>
        </div>
      </header>
      <main class="desk-main-part">
        <ul class="places">
          {boards.flatMap((board) =>
            SPOTS.map((spot) => {
              const place = { board, spot }
              const there = pots.find(({ facts }) => placeText(facts.place) === placeText(place))?.facts
              return (
                <li key={placeText(place)}>
                  <button
                    type="button"
                    class={there && there.potId === hand ? 'key place is-held' : 'key place'}
                    disabled={!there && hand === undefined}
                    onClick={() => {
                      if (hand === undefined) return setHand(there?.potId)
                      if (there?.potId !== hand) act({ do: 'move', potId: hand, place })
                      setHand(undefined)
                    }}
                  >
                    <small>{placeText(place)}</small>
                    <strong class="figures">{there?.number ?? '–'}</strong>
                  </button>
                </li>
              )
            }),
          )}
        </ul>
      </main>
    </div>
  )
}
