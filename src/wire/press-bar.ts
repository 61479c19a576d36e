import { type ReadonlySignal, signal } from '@preact/signals'
import { AGAIN_MS, CARD_MS, KNOCK_MS, REACH_MS } from '../device/press-facts.ts'
import type { Away, BenchView } from '../screens/app.ts'
import { offersRing } from '../screens/bench/ring-line.ts'
import type { Extras } from '../screens/extras.ts'
import { barAction, cardKey, smallAction } from '../table/card/bar-action.ts'
import { HIT_TOLD_MS } from '../table/card/last-hit.ts'
import type { Action } from '../table/model/action.ts'
import type { Hits } from './hits.ts'
import type { Moment } from './moment.ts'

interface Parts {
  readonly hits: Hits
  readonly moment: Moment
  readonly away: { readonly at: ReadonlySignal<Away | undefined>; back(): void }
  readonly extras: ReadonlySignal<Extras | undefined>
  /** Whether the bench is what shows. */
  atBench(): boolean
  /** OUT was heard: its tone ends. */
  hush(): void
}

/** How long a refusal stands, ms. */
const SAID_MS = 4000

/** The bench as hits find it: what its bar does, by whatever it is hit. */
export function openBar({ hits, moment, away, extras, atBench, hush }: Parts): BenchView {
  const { card, now, seen } = moment
  const said: BenchView['said'] = signal(undefined)
  const slip: BenchView['slip'] = signal(undefined)
  const leftOut: BenchView['leftOut'] = signal(new Set())
  const sheet: BenchView['sheet'] = signal(undefined)
  const elsewhere: BenchView['elsewhere'] = signal(undefined)
  let hitMs = Number.NEGATIVE_INFINITY
  let shownMs = Number.NEGATIVE_INFINITY
  let hitCard = ''
  let guardMs = AGAIN_MS

  /** A second hit so soon after the first is none; longer where the first brought another card. */
  const isAgain = (atMs: number): boolean =>
    atMs - hitMs < (cardKey(card.peek(), 0) === hitCard ? AGAIN_MS : guardMs)
  const struck = (atMs: number): void => {
    hitMs = atMs
    // A page that lies over the card goes with its hit.
    hitCard = away.at.peek() ? '' : cardKey(card.peek(), 0)
    guardMs = card.peek().offer ? REACH_MS : KNOCK_MS
  }

  const hit = (action: Action | undefined, atMs: number): void => {
    if (!action) {
      hits.refused()
      return
    }
    const refusal = hits.act(action, atMs)
    // What a stopped coat came to is said at once: it counts as on.
    slip.value =
      action.do === 'stop' && !refusal ? { dipId: action.dipId, until: now.peek() + HIT_TOLD_MS } : undefined
    said.value = refusal && { refusal, until: now.peek() + SAID_MS }
  }
  return {
    said,
    slip,
    leftOut,
    sheet,
    elsewhere,
    hit,
    pressSmall(atMs) {
      if (isAgain(atMs)) return
      struck(atMs)
      hit(smallAction(card.peek(), leftOut.peek()), atMs)
    },
    pressBar(by, atMs) {
      if (!atBench() && elsewhere.peek() && atMs - hitMs >= AGAIN_MS) {
        hitMs = atMs
        elsewhere.peek()?.(atMs)
        return
      }
      const shown = card.peek()
      if (!atBench() || shown.kind === 'empty' || isAgain(atMs)) return
      // Fingers are held to this by the rules for touches, from the paint of the card on.
      if (by !== 'press' && by !== 'hold' && atMs - shownMs < CARD_MS) return
      struck(atMs)
      const opened = extras.peek()
      if (sheet.peek()) hits.refused()
      else if (away.at.peek() && shown.kind !== 'count') away.back()
      else if (shown.kind === 'out') hush()
      else if (offersRing(opened, seen.peek(), shown, now.peek())) opened?.setRing(true)
      else if (shown.kind === 'closed' && opened && opened.longWaits() > 0) void opened.calendar()
      else hit(barAction(shown, by === 'hold', leftOut.peek()), atMs)
    },
    cardShown(atMs) {
      shownMs = atMs
      leftOut.value = new Set()
    },
  }
}
