import type { Appended, OpenedJournal } from '../../../src/store/index.ts'

export const CLOCKS = 5

export type PageEvent =
  | { readonly kind: 'started'; readonly clock: number; readonly dueAt: number }
  | { readonly kind: 'noted'; readonly text: string }

declare global {
  interface Window {
    sitting: {
      readonly journal: OpenedJournal<PageEvent>
      readonly hit: (clock: number, note?: string) => Appended<PageEvent>
      /** Time `openJournal` took. */
      readonly openMs: number
    }
  }
}
