import { signal } from '@preact/signals'
import type { ComponentType } from 'preact'
import { useEffect } from 'preact/hooks'
import { useApp } from './app.ts'
import { Bench } from './bench/bench.tsx'
import { First } from './first/first.tsx'

const desk = signal<ComponentType | 'loading' | 'failed'>('loading')

/** The screens for clean hands come after the first paint: the bench never waits for them. */
function loadDesk() {
  import('./desk/desk.tsx').then(
    ({ Desk }) => {
      desk.value = Desk
    },
    () => {
      desk.value = 'failed'
    },
  )
}

/** How long the bench has the phone to itself before the other screens are fetched, ms. */
const LATER_MS = 1500

/** The screen the route names. */
export function Screens() {
  const { route, table } = useApp()
  const noPots = Object.values(table.value.pots).every((pot) => pot.gone)
  const to = route.value
  const atDesk = to.at !== 'first' && to.at !== 'bench'
  useEffect(() => scrollTo(0, 0), [to])
  useEffect(() => {
    if (desk.peek() !== 'loading') return
    const timer = setTimeout(loadDesk, atDesk ? 0 : LATER_MS)
    return () => clearTimeout(timer)
  }, [atDesk])
  if (!atDesk) return to.at === 'first' || noPots ? <First /> : <Bench />
  const Desk = desk.value
  return Desk === 'loading' ? null : Desk === 'failed' ? <Missing /> : <Desk />
}

/** A part of the app could not be fetched: no network, and not kept yet. */
function Missing() {
  const { words, go } = useApp()
  const w = words.value
  return (
    <main class="desk desk-main-part">
      <p>{w.missing}</p>
      <button type="button" class="desk-main" onClick={() => location.reload()}>
        {w.retry}
      </button>
      <button type="button" class="desk-second" onClick={() => go({ at: 'bench' })}>
        {w.toBench}
      </button>
    </main>
  )
}
