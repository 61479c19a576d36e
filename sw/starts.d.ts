/** Which version is shown: the newest, unless it did not start twice. Kept beside the files, as workers come and go. */
export interface Starts {
  /** The version of the worker in charge. */
  readonly version?: string
  /** The one before it. */
  readonly before?: string
  /** The one that started last. */
  readonly worked?: string
  /** Starts of `version` that came to nothing. */
  readonly failed: number
  /** When a page was given out that has not said yet that it works, epoch ms. */
  readonly since?: number
}
export declare function readStarts(): Promise<Starts>
export declare function keepStarts(starts: Starts): Promise<void>
/** A version has taken over. */
export declare const takenOver: (starts: Starts, version: string) => Starts
/** A page is asked for. */
export declare function asked(starts: Starts, nowMs: number): Starts
export declare const hasFallenBack: ({ version, worked, failed }: Starts) => boolean
/** The version whose page is given out. */
export declare const shownVersion: (starts: Starts) => string | undefined
/** The page that was given out has drawn its first screen. */
export declare function started(starts: Starts): Starts
