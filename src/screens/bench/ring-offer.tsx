import { useContext } from 'preact/hooks'
import { AnswerBars, KnuckleBar } from '../../ui/bar.tsx'
import { useApp } from '../app.ts'
import type { Extras } from '../extras.ts'
import { Acts } from './press.tsx'

/** The two answers to the offer, in place of the bar that rests; the strip above asks. */
export function RingOffer({ extras }: { readonly extras: Extras }) {
  const { table, words } = useApp()
  const acts = useContext(Acts)
  const w = words.value.ring
  acts.set('ring-yes', () => extras.setRing(true))
  acts.set('ring-no', () => extras.setRing(false))
  return (
    <AnswerBars
      big={{ act: 'ring-yes', label: w.yes }}
      small={{ act: 'ring-no', label: w.no }}
      hand={table.value.settings.hand}
    />
  )
}

/** All coats are on and the hands are clean: what is left is a long wait. */
export function CalendarBar({ extras }: { readonly extras: Extras }) {
  const { words } = useApp()
  const acts = useContext(Acts)
  acts.set('calendar', () => void extras.calendar())
  return <KnuckleBar act="calendar" label={words.value.ring.calendar} rest />
}
