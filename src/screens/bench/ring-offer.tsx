import { useContext } from 'preact/hooks'
import { AnswerBars, KnuckleBar } from '../../ui/bar.tsx'
import { useApp } from '../app.ts'
import type { Extras } from '../extras.ts'
import { Acts } from './press.tsx'

/** The offer, in place of the bar that rests. */
export function RingOffer({ extras }: { readonly extras: Extras }) {
  const { table, words } = useApp()
  const acts = useContext(Acts)
  const w = words.value.ring
  acts.set('ring-yes', () => extras.setRing(true))
  acts.set('ring-no', () => extras.setRing(false))
  return (
    <section class="rest-list">
      <div class="ring-offer">
        <strong>{w.offer}</strong>
        <span>{w.offerText}</span>
      </div>
      <AnswerBars
        big={{ act: 'ring-yes', label: w.yes }}
        small={{ act: 'ring-no', label: w.no }}
        hand={table.value.settings.hand}
      />
    </section>
  )
}

/** All coats are on and the hands are clean: what is left is a long wait. */
export function CalendarBar({ extras }: { readonly extras: Extras }) {
  const { words } = useApp()
  const acts = useContext(Acts)
  acts.set('calendar', () => void extras.calendar())
  return <KnuckleBar act="calendar" label={words.value.ring.calendar} rest />
}
