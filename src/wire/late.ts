/** What screens ask for once in a while: each fetched when it is asked for. */

import type { ReadonlySignal } from '@preact/signals'
import type { TableEvent } from '../../shared/events.ts'
import type { Faults } from '../device/faults.ts'
import { lastCopiedMs } from '../device/seen.ts'
import type { App, Health } from '../screens/app.ts'
import type { Journal } from '../store/index.ts'
import type { Table } from '../table/model/state.ts'

export interface LateParts {
  readonly journal: Journal<TableEvent>
  readonly table: ReadonlySignal<Table>
  readonly faults: Faults
  readonly demo: boolean
  /** This phone's clock, epoch ms. */
  readonly now: () => number
  readonly patch: (change: Partial<Health>) => void
}

export type Late = Pick<
  App,
  | 'proposeLoad'
  | 'tryDemo'
  | 'leaveDemo'
  | 'passSheets'
  | 'backUp'
  | 'lookInto'
  | 'passing'
  | 'asks'
  | 'hear'
  | 'copyPutOff'
  | 'photos'
  | 'drafts'
  | 'passOnFaults'
>

export function openLate({ journal, table, faults, demo, now, patch }: LateParts): Late {
  const of = demo ? 'demo' : 'own'
  return {
    proposeLoad: async (input, first) => (await import('./packing.ts')).proposeBeside(input, first),
    tryDemo: async () => (await import('./demo.ts')).enter(journal, demo),
    leaveDemo: async () => (await import('./demo.ts')).leave(journal),
    passSheets: async () => (await import('./sheets.ts')).passSheets(table.peek(), of, now()),
    async backUp() {
      const done = await (await import('./backup.ts')).backUp(journal, now())
      patch({ copiedAt: lastCopiedMs() })
      return done
    },
    async lookInto(file) {
      const found = await (await import('./look-into.ts')).lookInto(journal, file, now, table.peek().skewMs)
      if (!found.ok) return found
      const takeIn: typeof found.takeIn = async (how) => {
        const done = await found.takeIn(how)
        patch({ copiedAt: lastCopiedMs() })
        return done
      }
      return { ...found, takeIn }
    },
    passing: async () => (await import('./passing.ts')).openPassing(journal, table, now),
    asks: async () => (await import('./fold-beside.ts')).asksNow(journal, table.peek()),
    hear: async (keys) => (await import('../device/heard.ts')).beHeard(keys),
    async copyPutOff(isNow) {
      const { copyPutOffAt, putOffCopy } = await import('../device/copy-put-off.ts')
      if (isNow) putOffCopy(now())
      const { workedAt } = await import('./worked.ts')
      return { putOffAt: copyPutOffAt(), workedAt: workedAt(journal.records) }
    },
    photos: async () => (await import('./photos.ts')).openPhotos(of),
    drafts: async () => (await import('../device/drafts.ts')).openDrafts(),
    passOnFaults: async () => (await import('./pass-on.ts')).passOnFaults(faults, now()),
  }
}
