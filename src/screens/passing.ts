/** Passing to another phone and taking in from it, by codes on the screen: as screens see it. */

import type { Handout } from '../../shared/nouns.ts'

export type CodeSize = 'fine' | 'coarse'

export interface Shown {
  /** Records in it, of so many on this phone. */
  readonly records: number
  readonly of: number
  /** How long a phone that misses none takes, s. */
  readonly seconds: number
  /** More than can be shown in a few minutes: a file does it. */
  readonly tooMuch: boolean
  /** Code `index`, from 0: dark modules, row by row, without white round it. */
  code(index: number): readonly (readonly boolean[])[]
}

/** What taking in came to. */
export interface Met {
  readonly added: number
  readonly known: number
  /** Of what was added. */
  readonly coats: number
  readonly pots: number
  /** Kept aside until an update of the app knows them; damaged or out of range, left out; ahead of this phone's clock. */
  readonly waiting: number
  readonly faulty: number
  readonly ahead: number
  /** This phone has so many that the other lacks. */
  readonly theyLack: number
  /** The other phone has more than it showed. */
  readonly more: boolean
  /** Its clock beyond this phone's, as both show it, ms. */
  readonly aheadMs: number
}

export type Read =
  /** A picture without a code, or with one of something else. */
  | { readonly is: 'nothing' }
  /** It said who it is; nothing else of it was read yet. */
  | { readonly is: 'greeted' }
  | { readonly is: 'part'; readonly known: number; readonly of: number }
  | { readonly is: 'met'; readonly met: Met }
  /** This phone's own codes; a clock more than a day off, ms; not what was shown; nothing could be kept. */
  | { readonly is: 'own' }
  | { readonly is: 'clock'; readonly aheadMs: number }
  | { readonly is: 'damaged' }
  /** Stacks with their buckets, or a class, each as it may be; and what only a newer program knows. */
  | { readonly is: 'handout'; readonly handout: Handout }
  | { readonly is: 'newer' }
  | { readonly is: 'unkept' }
  | { readonly is: 'no-camera'; readonly why: 'refused' | 'none' | 'busy' }

export interface Reader {
  /** Shows what the camera sees. */
  readonly video: HTMLVideoElement
  close(): void
}

export interface Passing {
  /** This phone's own name among phones. */
  readonly phone: string
  /** How many codes a second are shown. */
  readonly aSecond: number
  /** `back`: what the phone that was met last lacks; else all, for whoever looks. */
  show(size: CodeSize, back: boolean): Shown
  /** Codes of a handout, as above, of which a reader wants each once; none where it is more than a few can hold. */
  stillCodes(handout: Handout): readonly (readonly (readonly boolean[])[])[]
  /** Looks through the camera until it is closed; `told` after each picture. Undefined, and told, where there is none. */
  read(told: (read: Read) => void): Promise<Reader | undefined>
  /** While one of both goes on the screen stays lit. */
  stayLit(on: boolean): void
}
