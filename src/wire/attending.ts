import { type ReadonlySignal, signal } from '@preact/signals'
import { beSeen, lastSeen } from '../device/seen.ts'
import type { Away } from '../screens/app.ts'
import { doubtfulDips } from '../table/decide/decide-card.ts'
import type { Action } from '../table/model/action.ts'
import { earliestNow, type Jumps, lastKnownMs } from './clock-set.ts'
import type { Devices } from './devices.ts'
import type { Hits } from './hits.ts'
import type { Records } from './records.ts'

/** A page nobody saw for this long lists what came due meanwhile. */
const AWAY_MS = 60_000
const SEEN_EVERY_MS = 2000
/** Set back by less, a clock keeps no other phone from taking what is written by it, ms. */
const LONG_BACK_MS = 12 * 3_600_000

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
  jumps: Jumps,
  woken: (atMs: number) => void,
): Attending {
  const { table, journal } = records
  const away = signal<Away | undefined>(undefined)
  /** What the phone itself has to say is not said where nothing can be written. */
  const note = (action: Action) => {
    if (!records.readOnly.peek()) hits.act(action)
  }
  /** How far the clock was set ahead last while the page was seen, ms, and when, page time: that is no time away. */
  let ahead = { byMs: 0, pageMs: Number.NEGATIVE_INFINITY }
  const setLatelyMs = () => (clock.pageMs() - ahead.pageMs < SEEN_EVERY_MS ? ahead.byMs : 0)
  const unseen = (fromMs: number, toMs: number) => {
    const { skewMs } = table.peek()
    const doubtful = doubtfulDips(table.peek(), fromMs - skewMs, toMs - skewMs)
    const underWay = Object.values(table.peek().pots).some((pot) => !pot.gone && pot.dips.length > 0)
    if (underWay && toMs - fromMs - setLatelyMs() >= AWAY_MS)
      away.value = { from: fromMs - skewMs, to: toMs - skewMs }
    for (const dipId of doubtful) note({ do: 'dose-unsure', dipId })
  }

  /** Long behind: it may have been set right since `fromMs`, epoch ms. */
  const perhapsSetRight = async (fromMs: number) =>
    jumps.skewMs() < -LONG_BACK_MS &&
    (await import('./jumped.ts')).setRight({ ...records, away }, note, fromMs)

  const startMs = clock.epochMs()
  // A life sign is written late, or not at all when the phone kills the page; the last hit is one too.
  const knownMs = lastKnownMs(journal.records, journal.phone, lastSeen(), table.peek().skewMs)
  const earliestMs = earliestNow(table.peek(), knownMs, startMs)
  if (earliestMs !== undefined) {
    unseen(knownMs, earliestMs)
    note({ do: 'clock-moved', byMs: Math.round(startMs - earliestMs) })
  } else if (knownMs > 0 && knownMs < startMs) {
    unseen(knownMs, startMs)
    perhapsSetRight(knownMs)
  }
  lifecycle.onWake(({ reason, gapMs, atMs }) => {
    if (reason === 'start') return
    journal.refresh().catch(() => {})
    // A jump in this very moment is told of before it is looked for.
    clock.untakenMs()
    // No card is said that the list of what came due lies over.
    unseen(atMs - gapMs, atMs)
    woken(atMs)
  })
  clock.onJump((jump) => {
    if (jump.kind !== 'moved') return perhapsSetRight(Date.now() - jump.byMs)
    ahead = { byMs: jump.byMs, pageMs: clock.pageMs() }
    void import('./jumped.ts').then(({ writeJump }) => writeJump(records, jumps, note, jump))
  })
  const lifeSign = () =>
    document.visibilityState === 'visible' && beSeen(clock.epochMs(), table.peek().skewMs)
  lifeSign()
  setInterval(lifeSign, SEEN_EVERY_MS)
  return {
    at: away,
    back() {
      away.value = undefined
    },
  }
}
