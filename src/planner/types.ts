/**
 * What the planner is told and what it answers. Times are whole seconds on one running clock (any zero);
 * durations are whole seconds. The planner computes no drying: waits come in on their upper bound, unless a
 * touch check said otherwise, and the caller says so by giving an earlier `readyAtS`.
 */

/** A bucket. `openS` is the whole set-up of a visit: close the last one, rinse tongs, open, stir. */
export interface Bucket {
  readonly id: string
  readonly openS: number
  readonly restirS: number
  /** A dip is fresh when it starts at most this long after the end of the last stir. */
  readonly freshS: number
  /** Added to the set-up in which glaze is poured off for collar dips; once a visit. */
  readonly decantS: number
  /** Light before dark where nothing else decides: larger is darker. */
  readonly darkness?: number
}

/** A step before the first coat that needs hands and no bucket. Its wait runs from the step's end. */
export interface PrepStep {
  readonly kind: 'wax' | 'wipe'
  readonly activeS: number
  readonly waitAfterS: number
}

/** One coat still to be given. */
export interface Coat {
  readonly bucketId: string
  /** Hands' time of the whole step: lower, hold, lift, drip, foot, set down. */
  readonly dipS: number
  /** From the step's start to OUT, 0 to `dipS`. */
  readonly outAtS: number
  /** From OUT to the earliest start of the next coat; unused on a pot's last coat (see `kilnDryS`). */
  readonly waitAfterS: number
  /** A rim dip from a small vessel: needs glaze poured off in this visit. */
  readonly collar: boolean
  /** Soft: beyond this time after OUT of the coat below the surface turns powdery. */
  readonly longestWaitS?: number
}

/** A pot and what is left to do on it, in order: preparation, then coats (at least one). */
export interface Pot {
  readonly id: string
  readonly prep: readonly PrepStep[]
  readonly coats: readonly Coat[]
  /** Earliest start of the first step that is left. */
  readonly readyAtS: number
  /** Soft latest start of the first coat left, where a coat already lies below it. */
  readonly overLongAtS?: number
  /** From OUT of the last coat until the body is dry right through. */
  readonly kilnDryS: number
  /** Tall pots first while the bucket is full; larger is taller. Ties only. */
  readonly heightMm?: number
  /** Runny stacks early. Ties only. */
  readonly runny?: boolean
}

export interface OpenBucket {
  readonly bucketId: string
  readonly stirEndS: number
  /** Glaze for collars is already poured off in this visit. */
  readonly decanted: boolean
}

/** One pair of hands: free from `freeAtS` on (now, or when the step in hand or a pause ends). */
export interface Hands {
  readonly freeAtS: number
  readonly open: OpenBucket | null
  /** They let what they were told lie: it may go to the other hands. */
  readonly away?: boolean
}

/** Kiln start less loading. `doneDryAtS`: when the last pot without coats left will be kiln-dry. */
export interface Deadline {
  readonly loadStartS: number
  readonly doneDryAtS?: number
}

export interface PlanInput {
  readonly nowS: number
  readonly hands: readonly [Hands] | readonly [Hands, Hands]
  readonly buckets: readonly Bucket[]
  readonly pots: readonly Pot[]
  readonly deadline: Deadline | null
  /** Whole number; the same input and seed give the same plan. */
  readonly seed: number
}

/** Why an action stands where it stands. The sentences live with the words. */
export type Reason =
  | 'kept' // the card that was shown before
  | 'bucketOpen' // same bucket is open, nothing to change
  | 'longestChain' // of several that could go now, the most time still ahead of it
  | 'deadline' // its kiln-dry is the last one
  | 'heldSavesStir' // ready earlier, held on purpose: saves a stir
  | 'onlyReady' // nothing else could go
  | 'inWait' // done while pots dry
  | 'nextBucket' // everything for the last bucket is done or wet
  | 'stale' // the stir is too old for the next dip
  | 'stirInWait' // stirred early, hands were idle
  | 'pourOff' // collar glaze is poured off
  | 'startsWait' // its wait is the sooner begun the better

interface Timed {
  /** Which pair of hands, 0 or 1. */
  readonly potter: number
  readonly startS: number
  readonly endS: number
  readonly reason: Reason
}

export interface DipAction extends Timed {
  readonly kind: 'dip'
  readonly potId: string
  readonly bucketId: string
  /** Index into the pot's `coats` as given. */
  readonly coat: number
  readonly outS: number
  /** How long the pot is held back though pot and hands could go, 0 when not. */
  readonly heldS: number
}

export interface SetUpAction extends Timed {
  readonly kind: 'open' | 'restir'
  readonly bucketId: string
  readonly decant: boolean
  /** Dips until the next set-up of this pair of hands. */
  readonly dips: number
}

export interface PrepAction extends Timed {
  readonly kind: 'wax' | 'wipe'
  readonly potId: string
  /** Index into the pot's `prep` as given. */
  readonly step: number
}

export type PlanAction = DipAction | SetUpAction | PrepAction

/** What may come out otherwise than an input says, which holds what is likely. Times in seconds. */
export interface Odds {
  /** From the end of a drip until the next START, as it was at the latest steps; one is drawn for every step to come. */
  readonly betweenS: readonly number[]
  /** How far the pace of these hands is unknown: 1 while they have shown nothing, towards 0 with every step seen. */
  readonly unseen: number
  /** By so much, s, the input has stirs too old sooner than they are, so that late hands still reach their dips. */
  readonly slackS: number
  /** So much of it is in the input's steps already. */
  readonly meanBetweenS: number
  /** Part of the steps that an interruption of ten minutes comes before, besides. */
  readonly pauses: number
  /** Late edges by pot: from now until it can go on, and from OUT of each coat. */
  readonly pots: Readonly<
    Record<
      string,
      { readonly readyLateS: number; readonly waitsLateS: readonly number[]; readonly kilnLateS: number }
    >
  >
  /** Pots without coats to come: OUT of the last on the input's clock, and from there until kiln-dry; omitted: none. */
  readonly done?: Readonly<
    Record<string, { readonly outAtS: number; readonly dryS: number; readonly dryLateS: number }>
  >
}

/** A moment as likely sooner as later, with an early edge that few come before, and a late one that one in ten come after. */
export interface Band {
  readonly lower: number
  readonly likely: number
  readonly upper: number
}

/** How a plan may come out, on the input's clock. */
export interface Foresight {
  readonly finishS: Band
  readonly dryAtS: Band
  /** Part of the futures in which the deadline is missed; null without one. */
  readonly lateOdds: number | null
  /** By potter: how much later the end would be if they were gone ten minutes longer than their hands are free, s. */
  readonly interruptionS: readonly number[]
}

/** What no plan can beat. */
export interface LowerBound {
  readonly finishS: number
  readonly latenessS: number
  readonly openings: number
}

export interface Plan {
  /** By start; of equal starts the lower potter first. */
  readonly actions: readonly PlanAction[]
  /** End of the last dip (`nowS` with nothing to do). */
  readonly finishS: number
  /** Last kiln-dry moment; null with nothing to dry. */
  readonly dryAtS: number | null
  /** Seconds past the deadline, 0 when met or absent. */
  readonly latenessS: number
  /** Seconds between kiln-dry and the deadline, negative when late; null without a deadline. */
  readonly slackS: number | null
  readonly openings: number
  readonly restirs: number
  /** Sum over coats of the time beyond their soft longest wait. */
  readonly overLongS: number
  readonly bound: LowerBound
  /** No plan is better by lateness, finish, openings and re-stirs, in this order. */
  readonly proven: boolean
}
