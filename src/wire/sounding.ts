import type { TableEvent } from '../../shared/events.ts'
import type { VoiceLanguage } from '../../shared/languages.ts'
import type { Sound } from '../device/ports.ts'
import { openSound } from '../device/sound.ts'
import { planCount } from '../device/sound-plan.ts'
import type { Clip } from '../device/sound-schedule.ts'
import { openVoice } from '../device/voice.ts'
import { dipOf } from '../table/model/change.ts'
import type { Table } from '../table/model/state.ts'
import type { Devices } from './devices.ts'
import { type OneSounds, openOneSounds } from './one-sounds.ts'
import { openTelling } from './telling.ts'

/** The clips are fetched when the first screen has long been drawn. */
const VOICE_AFTER_MS = 1500

/** What sounds: fetched after the first card. */
export interface Sounding extends OneSounds {
  readonly sound: Sound
  /** Sounds what a hit means at once, before it is stored: `atMs` is the tap in page time. */
  hit(table: Table, events: readonly TableEvent[], atMs: number): void
  /** Hits of another window, which sounds from then on: what this one counts and they break off is over. */
  foreign(events: readonly TableEvent[]): void
  /** Makes the phone do what the moment asks for. */
  readonly tell: ReturnType<typeof openTelling>
  /** How counts are heard, and in which language. */
  use(mode: Table['settings']['sound'], language: VoiceLanguage): void
  /** A bucket's name in the person's own voice; null for its letter again. */
  nameBucket(bucketId: string, clip: Clip | null): void
}

export function openSounding(devices: Devices): Sounding {
  const one = openOneSounds(navigator.locks)
  const voice = openVoice()
  const sound = openSound(voice)
  const openedMs = performance.now()
  let wanted: VoiceLanguage | undefined
  let loaded: typeof wanted
  return {
    ...one,
    sound,
    hit(table, events, atMs) {
      one.take()
      soundHit(sound, devices.haptics, table, events, atMs)
    },
    foreign(events) {
      if (events.some(({ kind }) => kind === 'count-cancelled' || kind === 'count-stopped')) sound.stop()
    },
    tell: openTelling({
      sound: {
        say: (words) => one.here.peek() && sound.say(words),
        call: (...called) => one.here.peek() && sound.call(...called),
        warn: (words) => one.here.peek() && sound.warn(words),
        saying: sound.saying,
        quiet: sound.quiet,
      },
      haptics: { feel: (how) => one.here.peek() && devices.haptics.feel(how) },
      awake: devices.awake,
    }),
    use(mode, language) {
      sound.setMode(mode)
      wanted = mode === 'voice' ? language : wanted
      const waitMs = Math.max(0, openedMs + VOICE_AFTER_MS - performance.now())
      setTimeout(() => {
        if (wanted === undefined || wanted === loaded) return
        loaded = wanted
        void voice.load(wanted, './voice/')
      }, waitMs)
    },
    nameBucket: voice.setName,
  }
}

function soundHit(
  sound: Sound,
  haptics: Devices['haptics'],
  table: Table,
  events: readonly TableEvent[],
  atMs: number,
): void {
  for (const event of events) {
    switch (event.kind) {
      case 'dipped': {
        if (event.told) break
        const { leadS, lowerS, holdS } = event
        const poured = event.cover.kind === 'inside'
        const plan = planCount({ leadS, lowerS, holdS, dripS: table.settings.dripS, poured })
        sound.count(plan, atMs)
        haptics.count(plan)
        return
      }
      case 'count-cancelled':
        sound.stop()
        haptics.feel('refused')
        return
      case 'count-stopped':
        sound.stop()
        sound.drip(table.settings.dripS, atMs, dipOf(table, event.dipId)?.dip.cover.kind === 'inside')
        haptics.feel('out')
        return
    }
  }
  haptics.feel('short')
}
