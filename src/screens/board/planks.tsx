import { useState } from 'preact/hooks'
import type { Place } from '../../../shared/nouns.ts'
import type { TileOfPot } from '../../table/card/board-view.ts'
import { SPOTS_PER_BOARD } from '../../table/model/places.ts'
import { potsOnTable } from '../../table/model/plan.ts'
import { refusalText } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { placeText } from '../text/amounts.ts'
import { nameOf } from '../text/pot-text.ts'
import { PotTile } from './pot-tile.tsx'

const SPOTS = Array.from({ length: SPOTS_PER_BOARD }, (_, i) => i + 1)

interface PlanksProps {
  readonly boards: readonly string[]
  readonly tiles: readonly TileOfPot[]
  /** Table time, ms. */
  readonly now: number
  /** The pot in the hand. */
  readonly held?: string | undefined
  readonly lifted: { readonly key: string; readonly dx: number; readonly dy: number } | undefined
  readonly onPot: (tile: TileOfPot) => void
  /** A free place was tapped; without it they can't be. */
  readonly onFree?: ((place: Place) => void) | undefined
}

/** The boards as they lie there: a row each, with the places of one that are free. */
export function Planks({ boards, tiles, now, held, lifted, onPot, onFree }: PlanksProps) {
  const { words } = useDesk()
  const w = words.value.desk.places
  return (
    <ul class="board-tiles">
      {boards.map((board) => (
        <li key={board} class="plank">
          <ul>
            {spotsOn(board, tiles).map((spot) => {
              const at = placeText({ board, spot })
              const there = tiles.filter(({ place }) => placeText(place) === at)
              if (there.length > 0)
                return there.map((tile) => (
                  <PotTile
                    key={tile.potId}
                    tile={tile}
                    now={now}
                    held={held === tile.potId}
                    carried={lifted?.key === tile.potId ? lifted : undefined}
                    onTap={() => onPot(tile)}
                  />
                ))
              return (
                <li key={at} class="free" data-place={at}>
                  {onFree ? (
                    <button type="button" aria-label={w.free(at)} onClick={() => onFree({ board, spot })}>
                      {at}
                    </button>
                  ) : (
                    <span aria-hidden="true">{at}</span>
                  )}
                </li>
              )
            })}
          </ul>
        </li>
      ))}
    </ul>
  )
}

/** The places of a board; of phones that met two pots may have one, or a place that no board here has. */
const spotsOn = (board: string, tiles: readonly TileOfPot[]): readonly number[] =>
  [...new Set([...SPOTS, ...tiles.flatMap(({ place }) => (place.board === board ? [place.spot] : []))])].sort(
    (a, b) => a - b,
  )

/** Moving pots: the way to do it, what the last move came to, and a key that takes it back. */
export function useMoves() {
  const { table, words, act } = useDesk()
  const [moved, setMoved] = useState<{ readonly potIds?: readonly string[]; readonly said?: string }>()
  const pots = (moved?.potIds ?? []).flatMap((potId) => table.value.pots[potId] ?? [])
  return {
    move: (potId: string, place: Place) => {
      const there = potsOnTable(table.value).find(({ facts }) => placeText(facts.place) === placeText(place))
      const refusal = act({ do: 'move', potId, place })
      // Onto a place that is taken the two change places.
      const potIds = [potId, ...(there ? [there.facts.potId] : [])]
      setMoved(refusal ? { said: refusalText(words.value, refusal) } : { potIds })
    },
    said:
      pots.length > 0
        ? pots
            .map((pot) =>
              words.value.desk.places.stands(nameOf(words.value, pot), placeText(pot.facts.place)),
            )
            .join(' ')
        : moved?.said,
    takeBack:
      pots.length > 0 ? (
        <button
          type="button"
          class="key"
          onClick={() => {
            if (!act({ do: 'take-back' })) setMoved(undefined)
          }}
        >
          {words.value.desk.takeBack}
        </button>
      ) : null,
  }
}

/** A place by what it is called; undefined where it names none. */
export function placeNamed(text: string): Place | undefined {
  const [board, spot] = text.split(' ')
  return board && spot ? { board, spot: Number(spot) } : undefined
}
