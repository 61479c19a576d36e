import type { TileOfPot } from '../../table/card/board-view.ts'
import { BandStrip } from '../../ui/strip.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { placeText, tileText } from '../text/amounts.ts'

interface TileProps {
  readonly tile: TileOfPot
  /** Table time, ms. */
  readonly now: number
}

/** A tile has room for so many letters of its one size. */
const SHORT = 8

/** One pot on its board: place, number, coats, and one word. READY turns it to ink. */
export function PotTile({ tile, now }: TileProps) {
  const { words, formats, go } = useDesk()
  const { place, bands, state, joined, potId } = tile
  const number = tile.lid ? words.value.bench.lid(tile.number) : tile.number
  const text = tileText(words.value, formats.value, state, now)
  const at = placeText(place)
  const classes = [
    'tile',
    `tile-${state.is}`,
    joined ? 'tile-joined' : '',
    text.length > SHORT ? 'tile-long' : '',
  ]
    .filter(Boolean)
    .join(' ')
  return (
    <li class={classes}>
      <button
        type="button"
        aria-label={words.value.desk.board.tile(number, at, text)}
        onClick={() => go({ at: 'pot', potId })}
      >
        <span class="tile-top figures">
          <span class="tile-place">
            {at}
            {tile.lid ? <span>{words.value.bench.lid('')}</span> : null}
          </span>
          <strong>{tile.number}</strong>
        </span>
        <BandStrip bands={bands} width={80} />
        <span class="tile-state figures">{text}</span>
      </button>
    </li>
  )
}
