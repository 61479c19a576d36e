import { useState } from 'preact/hooks'
import { boardsOf, SPOTS_PER_BOARD } from '../../table/model/places.ts'
import { potsOnTable } from '../../table/model/plan.ts'
import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { placeText } from '../text/amounts.ts'
import { nameOf } from '../text/pot-text.ts'

const SPOTS = Array.from({ length: SPOTS_PER_BOARD }, (_, i) => i + 1)

/** Order on the boards: tap a pot, then its place. A pot that stands there changes places with it. */
export function Places({ potId, back }: { readonly potId: string; readonly back: () => void }) {
  const { table, words, act } = useDesk()
  const w = words.value.desk.places
  const [hand, setHand] = useState<string | undefined>(potId)
  const pots = potsOnTable(table.value)
  const boards = boardsOf(pots.map(({ facts }) => facts.place))
  const held = hand === undefined ? undefined : table.value.pots[hand]
  return (
    <div class="desk">
      <DeskHead title={w.title} under={held ? w.where(nameOf(words.value, held)) : w.take} back={back} />
      <main class="desk-main-part">
        <ul class="places">
          {boards.flatMap((board) =>
            SPOTS.map((spot) => {
              const place = { board, spot }
              const there = pots.find(({ facts }) => placeText(facts.place) === placeText(place))
              return (
                <li key={placeText(place)}>
                  <button
                    type="button"
                    class={there && there.facts.potId === hand ? 'key place is-held' : 'key place'}
                    disabled={!there && hand === undefined}
                    onClick={() => {
                      if (hand === undefined) return setHand(there?.facts.potId)
                      if (there?.facts.potId !== hand) act({ do: 'move', potId: hand, place })
                      setHand(undefined)
                    }}
                  >
                    <small>
                      {there?.facts.lidOf === undefined
                        ? placeText(place)
                        : words.value.bench.lid(placeText(place))}
                    </small>
                    <strong class="figures">{there?.facts.number ?? '–'}</strong>
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
