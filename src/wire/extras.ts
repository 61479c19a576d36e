import type { ReadonlySignal, Signal } from '@preact/signals'
import type { UseStore } from 'idb-keyval'
import type { Database } from '../../shared/database.ts'
import { openAnswered } from '../device/answered.ts'
import { CALENDAR_TYPE, calendarFile } from '../device/ics.ts'
import { openShare } from '../device/share.ts'
import { planTone, TONE_S } from '../device/sound-plan.ts'
import type { BenchView, Route } from '../screens/app.ts'
import type { Extras } from '../screens/extras.ts'
import { onNoticeTap, takeNoticeTaps } from '../store/notice-taps.ts'
import type { Card } from '../table/card/card.ts'
import { placeText } from '../table/model/plan.ts'
import type { Table } from '../table/model/state.ts'
import { longWaits } from '../table/steps/calls-ahead.ts'
import type { Words } from '../words/bench.ts'
import type { Formats } from '../words/format.ts'
import { languageOf, voiceOf } from '../words/languages.ts'
import { LATE_WORDS } from '../words/late.ts'
import type { Devices } from './devices.ts'
import { fileDay } from './file-day.ts'
import { callTitle, openKilnCalls } from './kiln-calls.ts'
import { openKnocking } from './knocking.ts'
import { openNames } from './names.ts'
import { openRinging, type Ringing, ringFacts } from './ringing.ts'
import type { Sounding } from './sounding.ts'

/** What the program lends to what is fetched lazily. */
export interface Lent {
  readonly devices: Devices
  readonly sounding: Sounding
  readonly database: Database
  readonly table: ReadonlySignal<Table>
  readonly now: ReadonlySignal<number>
  readonly card: ReadonlySignal<Card>
  readonly route: Signal<Route>
  readonly bench: BenchView
  readonly words: ReadonlySignal<Words>
  readonly formats: ReadonlySignal<Formats>
}

export interface Parts extends Lent {
  /** Facts about this phone alone. */
  readonly store: UseStore
}

export interface OpenedExtras extends Extras {
  /** The ready calls go through it. */
  readonly caller: Ringing
}

export async function openExtras(lent: Lent): Promise<OpenedExtras> {
  const { database, table, now, card } = lent
  const store = database.store('local')
  const parts: Parts = { ...lent, store }
  const ringing = openRinging(parts, await ringFacts(store))
  const knocking = await openKnocking(parts, ringing.calling, ringing.heard)
  const names = await openNames(parts)

  const fromNotice = async (): Promise<void> => {
    if ((await takeNoticeTaps(database)).length === 0) return
    ringing.heard()
    lent.route.value = { at: 'bench' }
  }
  onNoticeTap(() => void fromNotice())
  void fromNotice().catch(() => {})

  const waits = () => longWaits(table.peek(), now.peek())
  const kiln = openKilnCalls(lent)
  const hinted = new Set<string>()
  return {
    ...names,
    ...openAnswered(),
    sayHint(kind, text) {
      const { settings } = table.peek()
      const { sound, here } = lent.sounding
      // Who is spoken to in another language than the screen's reads it.
      const language = languageOf(settings.language)
      const isHeard = here.peek() && settings.sound === 'voice' && voiceOf(settings) === language
      if (text === '') sound.hint('', language)
      else if (isHeard && !hinted.has(kind)) {
        hinted.add(kind)
        sound.hint(text, language)
      }
    },
    caller: ringing,
    ring: ringing.view,
    setRing: ringing.set,
    beginTest: ringing.test.begin,
    endTest: ringing.test.end,
    askNotices: ringing.askNotices,
    knock: knocking.view,
    setKnock: knocking.set,
    playTone(name) {
      const { sound, take } = lent.sounding
      if (card.peek().kind === 'count') return
      take()
      sound.quiet()
      if (isTone(name)) sound.play(planTone(name))
      else sound.call(name, [])
    },
    say: (words) => lent.sounding.here.peek() && lent.sounding.sound.say(words),
    longWaits: () => waits().length + kiln.ahead().length,
    async calendar() {
      const calls = waits().map(({ what, at, pots }) => {
        const places = pots.map(placeText).join(', ')
        const w = LATE_WORDS[table.peek().settings.language].ring
        return {
          uid: `${what}-${Math.round(at)}-${pots.map(({ facts }) => facts.potId).join('-')}`,
          dueMs: at + table.peek().skewMs,
          title: what === 'kiln' ? w.kilnDry(places) : w.ready(places),
        }
      })
      const ofKiln = kiln.ahead().map(({ loadId, what, at }) => ({
        uid: `${what}-${Math.round(at)}-${loadId}`,
        dueMs: at + table.peek().skewMs,
        title: callTitle(lent, what),
      }))
      calls.push(...ofKiln)
      if (calls.length === 0) return 'none'
      const name = `bucketside-${fileDay(Date.now())}.ics`
      return openShare().file(name, CALENDAR_TYPE, calendarFile(calls, Date.now()))
    },
  }
}

const isTone = (name: string): name is keyof typeof TONE_S => Object.hasOwn(TONE_S, name)
