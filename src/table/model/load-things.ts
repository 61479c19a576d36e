import type { LoadedKind } from '../../../shared/load.ts'
import type { LoadState } from './load-state.ts'

/** What a key stands for. */
export const thingOf = (key: string): { readonly what: LoadedKind; readonly potId?: string } =>
  key === '~tile' ? { what: 'tile' } : key === '~cones' ? { what: 'cones' } : { what: 'pot', potId: key }

/** A place as it is stored: to the hundredth of a mm, and no negative nothing. */
export const stored = (mm: number): number => Math.round(mm * 100) / 100 + 0

/** The load that is not lit yet, the latest begun: what is proposed and moved is in it. There is one at a time. */
export const loadInHand = (loads: Readonly<Record<string, LoadState>> = {}): LoadState | undefined =>
  Object.values(loads)
    .toSorted((a, b) => b.begunAt - a.begunAt)
    .find(({ litAt }) => litAt === undefined)
