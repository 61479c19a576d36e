export interface Leaf {
  readonly path: string
  readonly way: readonly string[]
  readonly text: string
  readonly holes: readonly {
    readonly name: string
    readonly source: string
    readonly start: number
    readonly end: number
  }[]
  readonly comment: string
  readonly start: number
  readonly end: number
  readonly line: number
}
export function leavesOf(source: string): Leaf[]
