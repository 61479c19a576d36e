import type { Meeting, Written } from './seen.ts'

/** What a phone said, by its place in the journal; `from` another one, left out this one. */
export interface Placed {
  readonly from?: string
  readonly order: number
}

/** Whether whoever said `later` had taken in by then what was said before. */
export const knew = (met: readonly Meeting[], later: Placed, before: Placed): boolean =>
  later.from === before.from
    ? later.order >= before.order
    : met.some(
        ({ by, of, upTo, order }) =>
          by === later.from && of === before.from && upTo >= before.order && order < later.order,
      )

/** Two that were said apart: neither knew of the other. */
export const apart = (met: readonly Meeting[], a: Placed, b: Placed): boolean =>
  !knew(met, a, b) && !knew(met, b, a)

/** Where a record of the journal is. */
export const placed = ({ from, order = 0 }: Pick<Written, 'from' | 'order'>): Placed => ({
  order,
  ...(from === undefined ? {} : { from }),
})
