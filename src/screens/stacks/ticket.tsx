import { useEffect, useState } from 'preact/hooks'
import { rideAlong, type TileTicket } from '../../table/advice/ticket.ts'
import { Swatch } from '../../ui/swatch.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { amount } from '../text/amounts.ts'
import './look-ahead.css'

/** Rest before the board is gone through, ms: the list shows first. */
const REST_MS = 400

/** The flow tile worth making for this board's firing, as a ticket: what to dip, what to measure, where to stand it. */
export function Ticket() {
  const { table, words, go } = useDesk()
  const w = words.value.desk.melt.ticket
  const [ticket, setTicket] = useState<TileTicket | null>()
  const { pots, tiles, buckets, stacks } = table.value
  useEffect(() => {
    const timer = setTimeout(() => setTicket(rideAlong(table.peek())), REST_MS)
    return () => clearTimeout(timer)
  }, [pots, tiles, buckets, stacks])
  if (ticket === undefined) return null
  const over = ticket ? table.value.buckets[ticket.over]?.facts : undefined
  const under = ticket?.under ? table.value.buckets[ticket.under]?.facts : undefined
  if (!ticket || !over) return <p class="help">{w.nothing}</p>
  const many = words.value.desk.stacks.used(ticket.pots)
  return (
    <section class="ticket">
      <h2>{w.title}</h2>
      <p class="ticket-what">
        <Swatch pattern={over.pattern} letter={over.letter} size={44} />
        <strong>{under ? w.pair(over.name, under.name, many) : w.one(over.name, many)}</strong>
      </p>
      {ticket.decides > 0 ? <p>{w.decides(words.value.desk.stacks.used(ticket.decides))}</p> : null}
      <ol>
        {under ? <li>{w.under(under.name)}</li> : null}
        <li>{w.dips(over.name, amount('bandMm', ticket.bandMm, table.value.settings.units))}</li>
        <li>{w.measure}</li>
        <li>{w.stand}</li>
      </ol>
      <button
        type="button"
        class="key"
        onClick={() =>
          go({ at: 'tile', bucketId: over.bucketId, ...(under ? { underId: under.bucketId } : {}) })
        }
      >
        {w.enter}
      </button>
    </section>
  )
}
