import type { ReadonlySignal, Signal } from '@preact/signals'
import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { Card } from '../table/card/card.ts'
import type { FollowedSchedule } from '../table/card/card-now.ts'
import type { Copies } from '../table/card/copy-due.ts'
import type { More } from '../table/decide/decision.ts'
import type { LoadInput, LoadPlan } from '../table/load/proposal.ts'
import type { Action, Refusal } from '../table/model/action.ts'
import type { Ask } from '../table/model/ask.ts'
import type { Potter } from '../table/model/potters.ts'
import type { Table } from '../table/model/state.ts'
import type { ScheduleOption } from '../table/order/schedule-options.ts'
import type { Words } from '../words/bench.ts'
import type { Formats } from '../words/format.ts'
import type { Extras } from './extras.ts'
import type { Passing } from './passing.ts'

export type Route =
  | { readonly at: 'first' }
  | { readonly at: 'bench' }
  | { readonly at: 'board' }
  /** `from` is where the way back leads, else the board. */
  | { readonly at: 'pot'; readonly potId?: string; readonly from?: 'bench' }
  /** `onward` is where saving leads: one was on the way there. */
  | { readonly at: 'stacks'; readonly stackId?: string; readonly onward?: Route }
  | { readonly at: 'buckets'; readonly bucketId?: string; readonly onward?: Route }
  | { readonly at: 'tile'; readonly bucketId: string; readonly underId?: string }
  | { readonly at: 'room'; readonly door?: string }
  /** The stages of the work in plain words. */
  | { readonly at: 'help'; readonly stage?: string }
  /** What phones that met have in two ways. */
  | { readonly at: 'settle' }
  /** Loading a kiln and what comes after; without an id the load in hand. */
  | { readonly at: 'shelf'; readonly loadId?: string }
  /** Guessing, judging and looking again at fired pots; without an id of the latest load that was lit. */
  | { readonly at: 'opening'; readonly loadId?: string }
  /** The same, with one pot in hand. */
  | { readonly at: 'judge'; readonly potId: string }
  /** A pot of a load without its number is told by what is seen of it. */
  | { readonly at: 'which'; readonly loadId?: string }
  | { readonly at: 'looks' }
  /** Pots that were fired without a load on this phone. */
  | { readonly at: 'elsewhere' }
  /** What fired pots say of each glaze and pair. */
  | { readonly at: 'taught' }
  /** All fired pots, and the story of one. */
  | { readonly at: 'fired' }
  | { readonly at: 'story'; readonly potId: string }
  /** Passing to another phone, and taking in from it. */
  | { readonly at: 'codes' }
  /** A stack, or all of them, as one code that another phone reads. */
  | { readonly at: 'handout'; readonly stackId?: string }
  /** Whose each pot of a class is, and all of it for their phones and on paper. */
  | { readonly at: 'class' }
  /** Three plots of what came of it all, and what is known of one glaze, or of it over another. */
  | { readonly at: 'plots' }
  | { readonly at: 'results'; readonly bucketId: string; readonly underId?: string }
  /** The glaze firing to come, and readings out of a book. */
  | { readonly at: 'firing' }

/** How the phone is doing; what does not work is said. */
export interface Health {
  readonly saved: 'saved' | 'saving' | 'not-saved'
  readonly sound: 'ok' | 'locked' | 'dead' | 'off'
  /** Another window of this phone sounds: the one hit last. */
  readonly soundsElsewhere: boolean
  readonly awake: 'idle' | 'held' | 'lost' | 'refused' | 'absent'
  readonly offlineReady: boolean
  readonly update: boolean
  /** A new version did not start twice: the one before it is shown. */
  readonly fellBack: boolean
  readonly readOnly: boolean
  /** Records set aside as damaged or unknown. */
  readonly quarantined: number
  /** What is kept could not be read, or has not been yet: the table that shows isn't it. */
  readonly unread: boolean
  /** So many records were kept and are gone, from the second copy too. */
  readonly lost: number
  /** When a backup left the app last, epoch ms. */
  readonly copiedAt: number | undefined
  /** So many were gone and came back from the second copy, of so many that had been here. */
  readonly recovered: number
  readonly recoveredOf: number
  /** Whether the second copy is kept, and whether the browser promised to throw nothing away; undefined until known. */
  readonly copyHere?: boolean
  readonly lasting?: boolean
  readonly install: 'installed' | 'prompt' | 'byHand' | 'unknown'
}

/** Nobody could see the page for a while: what came due meanwhile is listed before anything else. */
export interface Away {
  /** Table time, ms. */
  readonly from: number
  readonly to: number
}

/** What hits the bar: a finger, held or not, a key or a pedal, a button of a headset, a knock on the table. */
export type HitBy = 'press' | 'hold' | 'key' | 'media' | 'knock'

/** The bench as hits find it. `atMs` is page time of the touch-down. */
export interface BenchView {
  /** What was refused last, and until when that stands, table time, ms. */
  readonly said: Signal<{ readonly refusal: Refusal; readonly until: number } | undefined>
  /** A dip whose seconds were put right a moment ago: what it came to stands above the card until then. */
  readonly slip: Signal<{ readonly dipId: string; readonly until: number } | undefined>
  /** Pots that were tapped to be left out of the answer. */
  readonly leftOut: Signal<ReadonlySet<string>>
  /** What lies over the card. */
  readonly sheet: Signal<'other' | 'warnings' | 'ways' | 'sooner' | undefined>
  /** The one way of every hit on the bar: what it does, the card says. */
  pressBar(by: HitBy, atMs: number): void
  /** What the bar of another screen does while that shows. */
  readonly elsewhere: Signal<((atMs: number) => void) | undefined>
  /** The smaller answer of the card. */
  pressSmall(atMs: number): void
  /** Another action of the bench; its refusal is said. */
  hit(action: Action | undefined, atMs: number): void
  /** Another card was painted: what was meant for the old one does not count for it. */
  cardShown(atMs: number): void
}

/** Records of a file that are read, and of how many, null where that is gone as well; null where it is whole. */
type Whole = { readonly read: number; readonly of: number | null } | null

/** What taking in a backup came to. */
export interface TakenIn {
  readonly added: number
  readonly known: number
  /** Pictures that were not here, and those of the file that could not be read. */
  readonly photos: number
  readonly photosLost: number
  /** Damaged records, left out. */
  readonly faulty: number
  /** Kept aside until an update of the app knows them. */
  readonly waiting: number
  /** More than a day ahead of this phone's clock: left out. */
  readonly ahead: number
  readonly whole: Whole
}

/** What a file holds, before any of it is taken in. */
export type LookedInto =
  | {
      readonly ok: true
      /** Day it was made, as 2026-03-04; null where that is gone. */
      readonly day: string | null
      readonly records: number
      readonly pots: number
      readonly pictures: number
      /** Those it was made with that cannot be read of it. */
      readonly picturesLost: number
      /** Records that are not here. */
      readonly fresh: number
      readonly whole: Whole
      /** So many phones dipped coats within the last day whose clocks nobody compared that this phone knows of, or will. */
      readonly unclocked: number
      /** Nothing was done on this phone yet but set how it looks and sounds: it may go on as the one that made the file. */
      readonly mayGoOn: boolean
      /**
       * What that phone's clock showed when it made the file, and this one's now, epoch ms, where coats wait by it: it was never
       * compared.
       */
      readonly clock?: { readonly thereMs: number; readonly hereMs: number }
      takeIn(how: JoinedHow): Promise<TakenIn>
    }
  | { readonly ok: false; readonly code: 'too-large' | 'not-a-backup' | 'newer' }

/** As whose a file is joined. */
export interface JoinedHow {
  /** This phone goes on as the one that made it; else it is another at its table. */
  readonly goesOn?: boolean
  /** It was made just now: that tells the clocks apart. Else they agree, as far as was said. */
  readonly madeNow?: boolean
}

/** A rectangle of a picture, in parts of its sides from the upper left. */
export interface Box {
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
}

/** A picture in hand, upright. */
export interface Picture {
  readonly width: number
  readonly height: number
  /** Draws a part of it, as large as the canvas is. */
  draw(canvas: HTMLCanvasElement, part: Box): void
  /** A part of it as colours, its longer side `longest` px at most. */
  pixels(part: Box, longest: number): { width: number; height: number; data: Uint8ClampedArray }
  close(): void
}

/** What is half filled in, under a name and a key of what it is of: it outlives the page where the phone lets it. */
export interface Drafts {
  of(name: string, key: string): unknown
  keep(name: string, key: string, value: unknown): void
}

/** Pictures of fired pots: on this phone and in its backups alone. */
export interface Photos {
  /** A file opened to be measured: nothing of it is kept. Rejects where it is no picture. */
  open(file: Blob): Promise<Picture>
  /** A file drawn anew, small and without what a camera writes beside it. Rejects where it is no picture. */
  drawn(file: Blob): Promise<Blob>
  /** Stores it for good, and answers its name. */
  keep(picture: Blob): Promise<string>
  /** Undefined where it is gone: the record of it stays. Rejects where it cannot be read now. */
  get(photoId: string): Promise<Blob | undefined>
}

/** How a file got out. */
export interface PassedOn {
  readonly how: 'shared' | 'saved' | 'cancelled'
  /** Pictures that are not in it: gone, or in a storage that does not give them. */
  readonly left: number
}

/** What screens see of the program. Everything they do goes through `act`. */
export interface App {
  readonly table: ReadonlySignal<Table>
  /** Table time, ms. */
  readonly now: ReadonlySignal<number>
  /** The same with every frame of the screen while a count runs. */
  readonly frameNow: ReadonlySignal<number>
  readonly card: ReadonlySignal<Card>
  /** What the other pair of hands has on its card; undefined where one works alone. */
  readonly elsewhere: ReadonlySignal<Card | undefined>
  /** Whose card shows, where two work at this phone. */
  readonly potter: Signal<Potter>
  /** The order of work as told last; undefined while there is none. */
  readonly schedule: ReadonlySignal<FollowedSchedule | undefined>
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
  readonly bench: BenchView
  /** How a load could be packed, computed beside the page, the first answer told at once; rejects where none comes. */
  proposeLoad(input: LoadInput, first?: (plan: LoadPlan) => void): Promise<LoadPlan>
  go(route: Route): void
  /** This is the demo: a table of its own, of which nothing is backed up or taken in. */
  readonly demo: boolean
  /** Opens the demo evening from its beginning; the own table stays as it is. False where no page can be opened now. */
  tryDemo(): Promise<boolean>
  /** Opens the own table again, as it was. False as above. */
  leaveDemo(): Promise<boolean>
  /** Takes hits on `root`, and keys, while it is mounted. Returns the way to stop. */
  attachBench(root: HTMLElement): { cardChanged(): void; detach(): void }
  /** A whole backup of journal and pictures, through the phone's share sheet or as a file. */
  backUp(): Promise<PassedOn>
  /** What phones that met have in two ways, to be settled one at a time. */
  asks(): Promise<readonly Ask[]>
  /** Whether a copy outside the phone can wait. `now`: it is said now. */
  copyPutOff(now?: true): Promise<Pick<Copies, 'putOffAt' | 'workedAt'>>
  /** What other phones changed was read here: their keys. */
  hear(keys: readonly string[]): Promise<void>
  /** The records as sheets for a spreadsheet, and the pictures, in one file out of the app. */
  passSheets(): Promise<PassedOn>
  /** Looks into a backup, which can then be taken in. */
  lookInto(file: Blob): Promise<LookedInto>
  /** Passing to another phone and taking in from it; rejects while its code cannot be had. */
  passing(): Promise<Passing>
  /** Rejects while their code cannot be had. */
  photos(): Promise<Photos>
  /** Rejects while their code cannot be had. */
  drafts(): Promise<Drafts>
  retrySave(): void
  /** Notes a failure of a part of the app, on this phone alone. */
  fault(where: string, error: unknown): void
  /** The noted failures as a file for somebody who can mend them. */
  passOnFaults(): Promise<'shared' | 'saved' | 'cancelled'>
  /** What the phone had to say once was read. */
  noted(): void
  applyUpdate(): void
  install(): void
}

const AppContext = createContext<App | undefined>(undefined)
export const AppProvider = AppContext.Provider

export function useApp(): App {
  const app = useContext(AppContext)
  if (!app) throw new Error('no program here')
  return app
}

/** Words of a refusal; what only clean hands are refused is in the desk's words alone. */
export function refusalText(words: Words, { code, facts }: Refusal): string {
  const texts: Readonly<
    Partial<Record<Refusal['code'], string | ((of: NonNullable<typeof facts>) => string)>>
  > = words.refusal
  const text = texts[code] ?? words.refusal['nothing-to-do']
  return typeof text === 'string' ? text : text(facts ?? {})
}
