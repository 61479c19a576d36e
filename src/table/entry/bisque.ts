import type { BoardFacts, PotFacts } from '../../../shared/nouns.ts'

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

/** Water that a pot of another cone takes on this board's clay; undefined where the cone says nothing. */
export function absorptionAt(board: BoardFacts, cone: string): number | undefined {
  const [own, usual] = [USUAL_ABSORPTION[cone], USUAL_ABSORPTION[board.bisqueCone]]
  return own && usual && Math.round((board.absorption * own * 1000) / usual) / 1000
}

type Bisque = Pick<PotFacts, 'absorption' | 'bisqueCone'>

/** A pot's own absorption as it is to be kept: it follows a cone of its own, unless somebody measured it. */
export function ownAbsorption(board: BoardFacts, before: Bisque, next: Bisque): number | undefined {
  const followed = before.bisqueCone === undefined ? undefined : absorptionAt(board, before.bisqueCone)
  const measured = next.absorption !== undefined && next.absorption !== followed
  if (measured || next.bisqueCone === undefined) return measured ? next.absorption : undefined
  return absorptionAt(board, next.bisqueCone)
}
