import { effect, type ReadonlySignal, signal } from '@preact/signals'
import { get, type UseStore } from 'idb-keyval'
import { thisBrowser } from '../device/browser.ts'
import { openNotices } from '../device/notices.ts'
import type { TapeCall } from '../device/ports.ts'
import { openTape } from '../device/tape.ts'
import type { Extras, RingView } from '../screens/extras.ts'
import { OUT_MS } from '../table/card/card-now.ts'
import type { ReadyCall } from '../table/card/outputs.ts'
import { placeText } from '../table/model/plan.ts'
import type { PotState } from '../table/model/state.ts'
import { callsAhead } from '../table/steps/calls-ahead.ts'
import { voiceOf } from '../words/languages.ts'
import { LATE_WORDS } from '../words/late.ts'
import type { Parts } from './extras.ts'
import { keep } from './local.ts'
import { openRingTest, type RingTest } from './ring-test.ts'
import type { Caller } from './telling.ts'

/** What this phone remembers of ringing. */
export interface RingFacts {
  readonly on: boolean
  readonly offered: boolean
  readonly proof?: { readonly browser: string; readonly rang: boolean }
  readonly test?: { readonly dueMs: number }
}

const KEY = 'ring'
const NOTHING: RingFacts = { on: false, offered: false }
/** One notice names what is next and stays to be read; another rings when it is due. */
const NEXT_TAG = 'next'
const CALL_TAG = 'call'
/** The track says a call up to its sixth minute; what comes later is said by the page. */
const TRACK_SAYS_MS = 6.5 * 60_000

export interface Ringing extends Caller {
  readonly view: ReadonlySignal<RingView>
  readonly test: RingTest
  set(on: boolean): void
  askNotices: Extras['askNotices']
  /** After each hit, inside its tap. */
  afterHit(): void
  /** Another window rings from now on. */
  elsewhere(): void
  /** What came due was heard. */
  heard(): void
  /** A call is out that nobody has answered. */
  calling(): boolean
}

export const ringFacts = async (store: UseStore): Promise<RingFacts> => ({
  ...NOTHING,
  ...(await get<RingFacts>(KEY, store).catch(() => undefined)),
})

/** Rings with the screen off where the phone can: a track with the calls inside it, and notices. */
export function openRinging(parts: Parts, remembered: RingFacts): Ringing {
  const { table, now, card, words, formats, devices } = parts
  const tape = openTape()
  const notices = openNotices()
  const browser = thisBrowser()
  const answered = new Set<string>()
  const said = () => LATE_WORDS[table.value.settings.language].ring
  let facts = remembered
  let tuned = ''
  let tunedQuietMs = 0

  const proof = (): RingView['proof'] =>
    facts.proof?.browser === browser ? (facts.proof.rang ? 'proven' : 'failed') : 'untested'
  const look = (): RingView => ({
    on: facts.on,
    offered: facts.offered,
    track: tape.state(),
    proof: proof(),
    notices: notices.permission(),
    test: test?.view(),
  })
  const { on, offered } = facts
  const view = signal<RingView>({ on, offered, track: 'off', proof: proof(), notices: notices.permission() })
  const show = (): void => {
    view.value = look()
  }
  const remember = (part: Partial<RingFacts>): void => {
    facts = { ...facts, ...part }
    keep(parts.store, KEY, facts)
    show()
  }

  const ahead = () =>
    callsAhead(table.peek(), now.peek()).filter(({ pots }) => !pots.every((pot) => answered.has(coatOf(pot))))
  const epoch = (at: number): number => at + table.peek().skewMs
  const trackCalls = (): TapeCall[] =>
    ahead().map(({ at, bucketLetter, pots }) => ({
      dueMs: epoch(at),
      bucketLetter,
      places: pots.map(placeOf),
    }))

  /** Builds the track anew when it would say something else, or has stopped. Inside a tap. */
  function tune(): void {
    const testCall = test.call()
    const calls = [...(facts.on ? trackCalls() : []), ...(testCall ? [testCall] : [])]
    if (calls.length === 0 && tape.state() === 'off') return
    const shown = card.peek()
    const quietMs = shown.kind === 'count' || shown.kind === 'out' ? epoch(shown.dip.outAt) + OUT_MS : 0
    const key = JSON.stringify(calls.map((call) => ({ ...call, dueMs: Math.round(call.dueMs / 1000) })))
    const quieter = quietMs > Date.now() && quietMs !== tunedQuietMs
    if (key === tuned && !quieter && tape.state() === 'playing') return
    tuned = key
    tunedQuietMs = quietMs
    void tape.arm(calls, nextText(), quietMs)
  }

  const nextText = (): string => {
    const [first] = ahead()
    if (!first) return words.value.name
    return said().next(formats.value.clock(epoch(first.at)), first.pots.map(placeText).join(', '))
  }

  function notify(): void {
    const calls = ahead()
    notices.badge(calls.filter(({ at }) => at <= now.peek()).flatMap(({ pots }) => pots).length)
    void notices.clear(CALL_TAG)
    const [first] = calls
    if (!facts.on || !first) void notices.clear(NEXT_TAG)
    else {
      const body = said().noticeBody
      void notices.post({ tag: NEXT_TAG, title: nextText(), body, atMs: epoch(first.at), silent: true })
    }
  }

  const test = openRingTest({
    lifecycle: devices.lifecycle,
    dueMs: facts.test?.dueMs,
    changed: (dueMs) => remember({ test: dueMs === undefined ? undefined : { dueMs } }),
    arm: tune,
    learn: (rang) => remember({ proof: { browser, rang } }),
  })

  tape.onChange(show)
  devices.lifecycle.onWake(() => {
    void tape.resume()
    notify()
  })
  let loaded = ''
  effect(() => {
    const { settings } = table.value
    const { sound } = settings
    const spoken = voiceOf(settings)
    if (loaded === `${spoken} ${sound}`) return
    loaded = `${spoken} ${sound}`
    tuned = ''
    void tape.load(spoken, './tape/', sound === 'voice')
  })
  const heard = (): void => {
    for (const { at, pots } of ahead())
      if (at <= now.peek()) for (const pot of pots) answered.add(coatOf(pot))
    tape.answered()
    notify()
  }
  const calling = (): boolean => ahead().some(({ at }) => at <= now.peek())
  tape.onButton((button) => {
    if (devices.lifecycle.visible() && !calling()) parts.bench.pressBar('media', devices.clock.pageMs())
    else if (button === 'play') void tape.resume()
    else if (button === 'next' || calling()) heard()
    else tape.pause()
  })
  show()

  return {
    view,
    test,
    set(on) {
      remember({ on, offered: true })
      if (on) tune()
      else tape.off()
      notify()
    },
    askNotices: () => void notices.ask().then(show).then(notify),
    afterHit() {
      tune()
      // A notice needs no tap, and the card that the hit brought comes first.
      setTimeout(notify)
    },
    elsewhere() {
      tuned = ''
      tape.off()
    },
    heard,
    calling,
    saysItself({ potIds, at }: ReadyCall) {
      const { pots } = table.peek()
      if (potIds.every((potId) => pots[potId] && answered.has(coatOf(pots[potId])))) return true
      return facts.on && tape.state() === 'playing' && now.peek() - at < TRACK_SAYS_MS
    },
    called({ places, at }) {
      if (devices.lifecycle.visible()) return
      const title = said().ready(places.map(({ board, place }) => `${board} ${place}`).join(', '))
      void notices.post({
        tag: CALL_TAG,
        title,
        body: said().noticeBody,
        atMs: epoch(at),
        silent: false,
      })
    },
  }
}

/** A pot with the coat it waits for, and the answers it got. */
const coatOf = ({ facts, dips, touches }: PotState): string =>
  `${facts.potId} ${dips.length} ${touches.length}`

const placeOf = ({ facts }: PotState) => ({ board: facts.place.board, place: facts.place.spot })
