import type { PairFacts } from '../../../shared/nouns.ts'

/** The order matters: one glaze over another says nothing of the other way round. */
export const pairKey = ({ overId, underId }: Pick<PairFacts, 'overId' | 'underId'>): string =>
  `${overId} over ${underId}`
