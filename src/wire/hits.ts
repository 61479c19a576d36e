import { isBy } from '../../shared/record.ts'
import { randomId } from '../device/random-id.ts'
import type { App } from '../screens/app.ts'
import { decide } from '../table/decide/decide.ts'
import type { More } from '../table/decide/decision.ts'
import type { Refusal } from '../table/model/action.ts'
import { potterOf } from '../table/model/potters.ts'
import { type Fetched, fetched } from '../ui/fetched.ts'
import { type Jumps, orderMs } from './clock-set.ts'
import type { Devices } from './devices.ts'
import type { Moment } from './moment.ts'
import type { Records } from './records.ts'
import type { Sounding } from './sounding.ts'

/** What becomes of every hit: events that are sounded, then kept; or a refusal, which is heard. */
export interface Hits {
  readonly act: App['act']
  /** Decides on setting up and putting right; fetched lazily. */
  readonly setting: Fetched<More>
  /** A hit that nothing came of is heard. */
  refused(): void
}

interface Parts {
  readonly records: Records
  readonly moment: Moment
  readonly jumps: Jumps
  readonly devices: Devices
  readonly sounding: Fetched<Sounding>
  readonly fault: App['fault']
  /** After each hit, inside its tap. */
  afterHit(): void
}

/** What comes in later than this was not hit now, ms. */
const FRESH_MS = 5000

export function openHits({ records, moment, jumps, devices, sounding, fault, afterHit }: Parts): Hits {
  const { clock, haptics } = devices
  let own = false
  const setting = fetched(async () => (await import('../table/decide/decide-setup.ts')).decideSetup)
  const refused = () => {
    sounding.with(({ sound }) => sound.refused())
    haptics.feel('refused')
  }
  records.journal.subscribe((change) => {
    if (change.kind !== 'records' || own) return
    const nowMs = clock.epochMs()
    // Another phone sounds for itself.
    const isOwn = isBy(records.journal.phone)
    const fresh = change.records.filter((r) => isOwn(r) && Math.abs(nowMs - r.at) < FRESH_MS)
    if (fresh.length > 0) sounding.with(({ foreign }) => foreign(fresh.map(({ event }) => event)))
  })
  return {
    setting,
    refused,
    act(action, atMs = clock.pageMs(), more = setting.now()): Refusal | undefined {
      if (records.readOnly.peek()) {
        refused()
        return { code: 'read-only' }
      }
      // On a table that isn't the one that is kept: they would take that one away unseen.
      if (records.unread.peek() && (action.do === 'lay-demo' || action.do === 'clear-table')) {
        refused()
        return { code: 'unread' }
      }
      const at = Math.round(clock.epochAt(atMs))
      const table = records.table.peek()
      const skewMs = jumps.skewMs()
      const before = skewMs === table.skewMs ? table : { ...table, skewMs }
      const stamp = { at, hit: newId(), hands: potterOf(moment.seen.peek()) }
      const decision = decide(before, action, stamp, more)
      if ('refusal' in decision) {
        refused()
        return decision.refusal
      }
      try {
        sounding.with((opened) => opened.hit(before, decision.events, atMs))
      } catch (error) {
        // Whatever goes wrong with its sound, the hit is kept.
        fault('sound', error)
      }
      const tz = -new Date(at).getTimezoneOffset()
      own = true
      try {
        const stamp = { at, tz, mono: Math.round(atMs) }
        records.journal.append(decision.events, stamp, orderMs(at, before.skewMs, decision.events))
      } finally {
        own = false
      }
      afterHit()
      return undefined
    },
  }
}

const newId = (): string => randomId(6)
