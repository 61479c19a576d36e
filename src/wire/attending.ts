import { type ReadonlySignal, signal } from '@preact/signals'
import { beSeen, lastSeenMs } from '../device/seen.ts'
import type { Away } from '../screens/app.ts'
import { doubtfulDips } from '../table/decide/decide-card.ts'
import type { Action } from '../table/model/action.ts'
import type { Devices } from './devices.ts'
import type { Hits } from './hits.ts'
import type { Records } from './records.ts'

/** A page nobody saw for this long lists what came due meanwhile. */
const AWAY_MS = 60_000
const SEEN_EVERY_MS = 2000

export interface Attending {
  /** Nobody could see the page for so long; undefined once the list of what came due was seen. */
  readonly at: ReadonlySignal<Away | undefined>
  back(): void
}

/**
 * Watches whether anybody could see the page: counts that ran unseen are doubted, and what came due meanwhile is listed.
 * `woken`: the page is back, at this epoch ms.
 */
export function openAttending(
  records: Records,
  hits: Hits,
  { clock, lifecycle }: Devices,
  woken: (atMs: number) => void,
): Attending {
  const { table, journal } = records
  const away = signal<Away | undefined>(undefined)
  /** What the phone itself has to say is not said where nothing can be written. */
  const note = (action: Action) => {
    if (!records.readOnly.peek()) hits.act(action)
  }
  const unseen = (fromMs: number, toMs: number) => {
    const { skewMs } = table.peek()
    for (const dipId of doubtfulDips(table.peek(), fromMs - skewMs, toMs - skewMs))
      note({ do: 'dose-unsure', dipId })
    const underWay = Object.values(table.peek().pots).some((pot) => !pot.gone && pot.dips.length > 0)
    if (underWay && toMs - fromMs >= AWAY_MS) away.value = { from: fromMs - skewMs, to: toMs - skewMs }
  }

  const startMs = clock.epochMs()
  // A life sign is written late, or not at all when the phone kills the page; the last hit is one too.
  const lastHit = table.peek().hits.at(-1)
  const lastSeen = Math.max(lastSeenMs() ?? 0, lastHit ? lastHit.at + table.peek().skewMs : 0)
  if (lastSeen > 0 && lastSeen < startMs && !journal.readOnly) unseen(lastSeen, startMs)
  lifecycle.onWake(({ reason, gapMs, atMs }) => {
    if (reason === 'start') return
    journal.refresh().catch(() => {})
    woken(atMs)
    unseen(atMs - gapMs, atMs)
  })
  clock.onJump((jump) => {
    if (jump.kind === 'moved') note({ do: 'clock-moved', byMs: Math.round(jump.byMs) })
  })
  const lifeSign = () => document.visibilityState === 'visible' && beSeen(clock.epochMs())
  lifeSign()
  setInterval(lifeSign, SEEN_EVERY_MS)
  return {
    at: away,
    back() {
      away.value = undefined
    },
  }
}
