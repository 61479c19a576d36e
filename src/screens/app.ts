import type { ReadonlySignal, Signal } from '@preact/signals'
import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { Card } from '../table/card/card.ts'
import type { More } from '../table/decide/decision.ts'
import type { Action, Refusal } from '../table/model/action.ts'
import type { Potter } from '../table/model/potters.ts'
import type { Table } from '../table/model/state.ts'
import type { Schedule } from '../table/order/schedule.ts'
import type { ScheduleOption } from '../table/order/schedule-options.ts'
import type { Formats } from '../words/format.ts'
import type { Words } from '../words/index.ts'
import type { Extras } from './extras.ts'

export type Route =
  | { readonly at: 'first' }
  | { readonly at: 'bench' }
  | { readonly at: 'board' }
  | { readonly at: 'pot'; readonly potId?: string }
  | { readonly at: 'stacks'; readonly stackId?: string }
  | { readonly at: 'buckets'; readonly bucketId?: string }
  | { readonly at: 'tile'; readonly bucketId: string; readonly underId?: string }
  | { readonly at: 'room' }

/** How the phone is doing; what does not work is said. */
export interface Health {
  readonly saved: 'saved' | 'saving' | 'not-saved'
  readonly sound: 'ok' | 'locked' | 'dead' | 'off'
  readonly awake: 'idle' | 'held' | 'lost' | 'refused' | 'absent'
  readonly offlineReady: boolean
  readonly update: boolean
  readonly readOnly: boolean
  /** Records set aside as damaged or unknown. */
  readonly quarantined: number
  readonly install: 'installed' | 'prompt' | 'byHand' | 'unknown'
}

/** Nobody could see the page for a while: what came due meanwhile is listed before anything else. */
export interface Away {
  /** Table time, ms. */
  readonly from: number
  readonly to: number
}

/** A hit on a bench screen, after the press rules. `atMs` is page time of the touch-down. */
export interface BenchHit {
  readonly act: string
  readonly atMs: number
  readonly by: 'press' | 'hold'
}

/** What taking in a backup came to. */
export type TakenIn =
  | {
      readonly ok: true
      readonly added: number
      readonly known: number
      /** Damaged records, left out. */
      readonly faulty: number
      /** Kept aside until an update of the app knows them. */
      readonly waiting: number
      /** More than a day ahead of this phone's clock: left out. */
      readonly ahead: number
      /** Where the file is not whole: records read, and of how many, null if that's gone as well. */
      readonly whole: { readonly read: number; readonly of: number | null } | null
    }
  | { readonly ok: false; readonly code: 'too-large' | 'not-a-backup' | 'newer' }

/** What screens see of the program. Everything they do goes through `act`. */
export interface App {
  readonly table: ReadonlySignal<Table>
  /** Table time, ms. */
  readonly now: ReadonlySignal<number>
  /** The same with every frame of the screen while a count runs. */
  readonly frameNow: ReadonlySignal<number>
  readonly card: ReadonlySignal<Card>
  /** Whose card shows, where two work at this phone. */
  readonly potter: Signal<Potter>
  /** The order of work as told last; undefined while there is none. */
  readonly schedule: ReadonlySignal<Schedule | undefined>
  /** Ways out of being late for the kiln, by what they gain. */
  readonly scheduleOptions: ReadonlySignal<readonly ScheduleOption[]>
  readonly health: ReadonlySignal<Health>
  readonly away: ReadonlySignal<Away | undefined>
  readonly route: Signal<Route>
  readonly words: ReadonlySignal<Words>
  readonly formats: ReadonlySignal<Formats>
  /** Undefined until its code is here. */
  readonly extras: ReadonlySignal<Extras | undefined>
  /**
   * Does an action; `atMs` is the tap in page time. Answers the refusal, if it was one. `more` decides on setting up,
   * where its code is at hand before the program's own.
   */
  act(action: Action, atMs?: number, more?: More): Refusal | undefined
  /** A hit that no action came of: the refusal is heard. */
  refused(): void
  /** OUT was heard: its tone ends. */
  hush(): void
  go(route: Route): void
  /** Lays the demo on the empty table and goes to the bench. */
  layDemo(): Promise<void>
  /** The list of what came due was seen. */
  back(): void
  /** Feeds hits on `root`, and keys, to `onHit` while it is mounted. Returns the way to stop. */
  attachBench(root: HTMLElement, onHit: (hit: BenchHit) => void): { cardChanged(): void; detach(): void }
  /** A whole backup of the journal, through the phone's share sheet or as a file. */
  backUp(): Promise<'shared' | 'saved' | 'cancelled'>
  /** Takes in a backup; how many records were new. */
  takeIn(text: string): Promise<TakenIn>
  retrySave(): void
  applyUpdate(): void
  install(): void
}

const AppContext = createContext<App | undefined>(undefined)
export const AppProvider = AppContext.Provider

export function useApp(): App {
  const app = useContext(AppContext)
  if (!app) throw new Error('a screen outside the program')
  return app
}

/** Words of a refusal. */
export function refusalText(words: Words, refusal: Refusal): string {
  const text = words.refusal[refusal.code]
  return typeof text === 'string' ? text : text(refusal.facts ?? {})
}
