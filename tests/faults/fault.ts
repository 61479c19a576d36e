/** A one-line fault. `find` must occur exactly once in `file`; `tests` are the files that should notice it. */
export interface Fault {
  readonly id: string
  readonly file: string
  readonly find: string
  readonly replace: string
  readonly tests: readonly string[]
}
