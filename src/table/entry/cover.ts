import type { CoverFacts } from '../../../shared/nouns.ts'

/** Where a cover ends over the shelf, or how deep a collar is, mm; undefined where it goes all the way. */
export const reachMm = (cover: CoverFacts): number | undefined =>
  'edgeUpMm' in cover ? cover.edgeUpMm : 'depthMm' in cover ? cover.depthMm : undefined
