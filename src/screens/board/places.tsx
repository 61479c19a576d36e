import { useComputed } from '@preact/signals'
import { useState } from 'preact/hooks'
import { boardView } from '../../table/card/board-view.ts'
import { boardsOf } from '../../table/model/places.ts'
import { useCarry } from '../../ui/carry.ts'
import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { nameOf } from '../text/pot-text.ts'
import { Planks, placeNamed, useMoves } from './planks.tsx'
import './board.css'

interface PlacesProps {
  /** The pot in the hand; without it one is chosen first. */
  readonly potId?: string | undefined
  readonly back: () => void
}

/** Order on the boards: tap a pot, then its place, or drag it there. A pot that stands there changes places with it. */
export function Places({ potId, back }: PlacesProps) {
  const { table, now, card, words } = useDesk()
  const second = useComputed(() => Math.floor(now.value / 1000) * 1000)
  const { tiles } = useComputed(() => boardView(table.value, card.value, second.value)).value
  const w = words.value.desk.places
  const [hand, setHand] = useState<string | undefined>(potId)
  const { move, said, takeBack } = useMoves()
  const { root, lifted } = useCarry<HTMLElement>({
    drop: (key, at) => {
      const place = placeNamed(at)
      setHand(undefined)
      if (place) move(key, place)
    },
    hold: setHand,
  })
  const held = hand === undefined ? undefined : table.value.pots[hand]
  return (
    <div class="desk board">
      <DeskHead
        title={w.title}
        under={held ? w.where(nameOf(words.value, held)) : (said ?? w.take)}
        back={back}
      >
        {held ? null : takeBack}
      </DeskHead>
      <main class="board-main" ref={root}>
        <Planks
          boards={boardsOf(tiles.map(({ place }) => place))}
          tiles={tiles}
          now={second.value}
          held={hand}
          lifted={lifted}
          onPot={({ potId: tapped, place }) => {
            if (hand === undefined) return setHand(tapped)
            setHand(undefined)
            if (tapped !== hand) move(hand, place)
          }}
          onFree={
            hand === undefined
              ? undefined
              : (place) => {
                  setHand(undefined)
                  move(hand, place)
                }
          }
        />
      </main>
    </div>
  )
}
