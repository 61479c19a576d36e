import { useComputed } from '@preact/signals'
import { useState } from 'preact/hooks'
import { boardView } from '../../table/card/board-view.ts'
import { AIR_OLD_MS, DEFAULT_AIR } from '../../table/model/defaults.ts'
import { firedElsewhere, isAnyFired, loadsToJudge, toLookAt } from '../../table/opening/queue.ts'
import { handsLine, lateness } from '../../table/order/hands-line.ts'
import { useCarry } from '../../ui/carry.ts'
import { useDays } from '../days.ts'
import { useDesk } from '../desk/desk-app.ts'
import { ToSettle } from '../desk/to-settle.tsx'
import { WorthLine } from '../desk/worth-line.tsx'
import { useLateWords } from '../late-words.ts'
import { useCopyDue } from '../parts/copy-due.ts'
import { airText, amount } from '../text/amounts.ts'
import { EmptyBoard } from './empty.tsx'
import { Places } from './places.tsx'
import { Planks, placeNamed, useMoves } from './planks.tsx'
import './board.css'

/** All pots at once, or the moving of them. */
export function Board() {
  const [moving, setMoving] = useState<{ readonly potId?: string }>()
  return moving ? (
    <Places potId={moving.potId} back={() => setMoving(undefined)} />
  ) : (
    <AllPots move={(potId) => setMoving(potId === undefined ? {} : { potId })} />
  )
}

/** Board by board: how far each pot is, and what it waits for. A tap opens it, held it can be carried. */
function AllPots({ move }: { readonly move: (potId?: string) => void }) {
  const { table, now, card, schedule: told, words, formats, go } = useDesk()
  const second = useComputed(() => Math.floor(now.value / 1000) * 1000)
  const view = useComputed(() => boardView(table.value, card.value, second.value))
  const { tiles, waiting, ready } = view.value
  const w = words.value.desk.board
  const moves = useMoves()
  const { root, lifted } = useCarry<HTMLElement>({
    drop: (potId, at) => {
      const place = placeNamed(at)
      if (place) moves.move(potId, place)
    },
    hold: move,
  })
  const line = handsLine(table.value, told.value, second.value)
  const late = lateness(line)
  const days = useDays()
  const ends =
    line &&
    w.ends(
      waiting,
      days.between({
        likely: line.finish?.early ?? line.finishAt,
        upper: line.finish?.late ?? line.finishAt,
      }),
    )
  return (
    <div class="desk board">
      <header class="board-head">
        <div>
          <h1>{w.title}</h1>
          {moves.said ? (
            <p class="strong figures" role="status">
              {moves.said}
            </p>
          ) : late > 0 ? (
            <p class="alarm figures">{words.value.bench.late(formats.value.span(late))}</p>
          ) : (
            <p class="soft figures">
              {ends ??
                (waiting + ready > 0
                  ? w.counts(waiting, ready)
                  : tiles.length > 0
                    ? w.pots(tiles.length)
                    : '')}
            </p>
          )}
        </div>
        {moves.takeBack}
        <button type="button" class="key board-bench" onClick={() => go({ at: 'bench' })}>
          {w.bench}
        </button>
      </header>
      <main class="board-main" ref={root}>
        <ToSettle />
        {tiles.length === 0 ? (
          <EmptyBoard />
        ) : (
          <Planks
            boards={[...new Set(tiles.map(({ place }) => place.board))]}
            tiles={tiles}
            now={second.value}
            lifted={lifted}
            onPot={({ potId }) => go({ at: 'pot', potId })}
          />
        )}
        <AfterFire now={second.value} />
        {tiles.length === 0 ? null : <AirLine />}
        {tiles.length === 0 ? null : <WorthLine />}
        {tiles.length === 0 ? null : (
          <div class="pair board-more">
            <button type="button" class="key" onClick={() => move()}>
              {w.move}
            </button>
            <button type="button" class="key" onClick={() => go({ at: 'shelf' })}>
              {words.value.desk.shelf.title}
            </button>
          </div>
        )}
        <CopyLine />
      </main>
      <nav class="board-nav">
        <button type="button" class="key" onClick={() => go({ at: 'pot' })}>
          <Plus />
          {w.add}
        </button>
        <button type="button" class="key" onClick={() => go({ at: 'buckets' })}>
          {w.buckets}
        </button>
        <button type="button" class="key" onClick={() => go({ at: 'stacks' })}>
          {w.stacks}
        </button>
        <button type="button" class="key" onClick={() => go({ at: 'room' })}>
          {w.room}
        </button>
      </nav>
    </div>
  )
}

/** At rest: the copy outside the phone that is due. */
function CopyLine() {
  const { end: w } = useLateWords()
  const due = useCopyDue()
  if (!due) return null
  return (
    <>
      <p class="help figures">{due.text}</p>
      <div class="pair">
        <button type="button" class="key" onClick={due.backUp}>
          {w.backUp}
        </button>
        <button type="button" class="key" onClick={due.notNow}>
          {w.notNow}
        </button>
      </div>
    </>
  )
}

/** Pots of opened kilns that are still to be judged, and those that are due to be looked at again. */
function AfterFire({ now }: { readonly now: number }) {
  const { table, words, go } = useDesk()
  const w = words.value.desk.board
  const [first, ...others] = loadsToJudge(table.value, now)
  const again = toLookAt(table.value, now).length
  return (
    <div class="board-after">
      {first ? (
        <button
          type="button"
          class="desk-second"
          onClick={() => go({ at: 'opening', loadId: first.load.loadId })}
        >
          {w.judge(others.reduce((sum, { pots }) => sum + pots.length, first.pots.length))}
        </button>
      ) : null}
      {isAnyFired(table.value) || firedElsewhere(table.value).length > 0 ? (
        <button type="button" class="desk-second" onClick={() => go({ at: 'fired' })}>
          {w.fired}
        </button>
      ) : null}
      {again > 0 ? (
        <button type="button" class="desk-second" onClick={() => go({ at: 'looks' })}>
          {w.lookAgain(again)}
        </button>
      ) : null}
    </div>
  )
}

/** What every wait rests on, one tap from being changed. */
function AirLine() {
  const { table, now, words, formats, go } = useDesk()
  const { settings, board } = table.value
  const spell = table.value.air.at(-1)
  const air = spell?.air ?? DEFAULT_AIR
  const agoMs = spell ? now.value - spell.at : 0
  const w = words.value.desk.board
  return (
    <button type="button" class="board-air" onClick={() => go({ at: 'room', door: 'air' })}>
      <span class="figures">{airText(words.value, air, settings.units)}</span>
      <span class="figures">{w.wall(amount('wallMm', board.wallMm, settings.units))}</span>
      {agoMs < AIR_OLD_MS ? null : (
        <strong class="alarm figures">{words.value.desk.measured.air.old(formats.value.span(agoMs))}</strong>
      )}
    </button>
  )
}

const Plus = () => (
  <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
    <path d="M10 2 V18 M2 10 H18" stroke="currentColor" stroke-width="3.5" />
  </svg>
)
