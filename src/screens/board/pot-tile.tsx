import type { TileOfPot } from '../../table/card/board-view.ts'
import { BandStrip } from '../../ui/strip.tsx'
import type { DeskWords } from '../../words/desk.ts'
import type { Formats } from '../../words/format.ts'
import { useDesk } from '../desk/desk-app.ts'
import { PotMarkOf } from '../parts/pot-mark-of.tsx'
import { placeText, tileText } from '../text/amounts.ts'

interface TileProps {
  readonly tile: TileOfPot
  /** Table time, ms. */
  readonly now: number
  /** It is in the hand. */
  readonly held: boolean
  /** How far it is carried, px. */
  readonly carried?: { readonly dx: number; readonly dy: number } | undefined
  readonly onTap: () => void
}

/** A tile has room for so many letters of its one size. */
const SHORT = 7
/** A number of three digits takes the room of its place. */
const MANY = 100

/** One pot on its board: place, number, outline and coats, and one word. READY turns it to ink. */
export function PotTile({ tile, now, held, carried, onTap }: TileProps) {
  const { table, words, formats } = useDesk()
  const { place, bands, state, potId, number, lid } = tile
  const pot = table.value.pots[potId]
  const w = words.value.desk.board
  const { lead, text } = tileLines(
    w,
    formats.value,
    state,
    now,
    tileText(words.value, formats.value, state, now),
  )
  const at = placeText(place)
  const classes = [
    'tile',
    `tile-${state.is}`,
    text.length > SHORT ? 'tile-long' : '',
    number >= MANY ? 'tile-many' : '',
    held ? 'is-held' : '',
    carried ? 'is-carried' : '',
  ]
    .filter(Boolean)
    .join(' ')
  return (
    <li
      class={classes}
      data-carry={potId}
      data-place={at}
      style={carried ? { transform: `translate(${carried.dx}px, ${carried.dy}px)` } : undefined}
    >
      <button
        type="button"
        aria-label={w.tile(
          lid ? words.value.bench.lid(number) : number,
          at,
          [lead, text].filter(Boolean).join(' '),
        )}
        aria-pressed={held || undefined}
        onClick={onTap}
      >
        <span class="tile-top figures">
          <span class="tile-place">
            {at}
            {lid ? <span>{words.value.bench.lid('')}</span> : null}
          </span>
          <strong>{number}</strong>
        </span>
        {pot ? <PotMarkOf pot={pot} width={58} height={MARK_PX} /> : null}
        <BandStrip bands={bands} width={58} />
        <span class="tile-state figures">
          {lead ? <small>{lead}</small> : null}
          {text}
        </span>
      </button>
    </li>
  )
}

const MARK_PX = 38
const MINUTE_MS = 60_000
/** Below an hour minutes say it, far off hours do. */
const HOURS_MIN = [60, 10 * 60] as const

/** What a tile has room for of its pot's state: an hour and its minutes without their unit. */
function tileLines(
  w: DeskWords['desk']['board'],
  formats: Formats,
  state: TileOfPot['state'],
  nowMs: number,
  text: string,
): { readonly lead?: string; readonly text: string } {
  const until = state.is === 'kiln' ? state.dryMs : state.is === 'wait' ? state.untilMs : Number.NaN
  const waits = state.is === 'kiln' && until > nowMs && Number.isFinite(until)
  const lead = waits ? { lead: w.kiln.in } : {}
  // Whether it ever dries is not known.
  if (state.is === 'kiln' && !Number.isFinite(state.dryByMs)) return { ...lead, text }
  const min = Math.round((until - nowMs) / MINUTE_MS)
  if (min >= HOURS_MIN[0] && min < HOURS_MIN[1])
    return { ...lead, text: w.hours(Math.floor(min / 60), min % 60) }
  return { ...lead, text: waits ? formats.span(until - nowMs) : text }
}
