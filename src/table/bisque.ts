import type { BoardFacts } from '../../shared/nouns.ts'

/**
 * Water that a stoneware bisque takes, by weight, after the cone of its firing: the hotter, the less it drinks.
 * Assumption; a soaked shard says better.
 */
const USUAL_ABSORPTION: Readonly<Record<string, number>> = {
  '08': 0.15,
  '07': 0.14,
  '06': 0.13,
  '05': 0.125,
  '04': 0.12,
  '03': 0.11,
  '02': 0.1,
  '01': 0.085,
  '1': 0.07,
  '2': 0.055,
  '3': 0.045,
  '4': 0.035,
  '5': 0.025,
  '6': 0.015,
}

/** The board as it is to be kept: with another cone the absorption follows, unless somebody measured it. */
export function withCone(before: BoardFacts, next: BoardFacts): BoardFacts {
  const measured =
    next.absorption !== before.absorption || before.absorption !== USUAL_ABSORPTION[before.bisqueCone]
  const usual = USUAL_ABSORPTION[next.bisqueCone]
  return next.bisqueCone === before.bisqueCone || measured || usual === undefined
    ? next
    : { ...next, absorption: usual }
}
