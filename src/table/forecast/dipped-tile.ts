import { type BucketFacts, type DippedTile, MOST_DIPPED_TILES } from '../../../shared/nouns.ts'
import { dipAlarm, dipDensity } from '../../engine/fired/dip-density.ts'

/** What a dipped tile says of its bucket: off its target, or nothing that stands out. It is an alarm and no reading. */
export type TileSays = 'thin' | 'thick' | 'nothing'

/** What a tile that gained so much dry says; undefined before there is one to hold it against. */
export function tileSays(
  facts: Pick<BucketFacts, 'targetGramsPerMl' | 'toleranceGramsPerMl'>,
  references: readonly DippedTile[],
  gainG: number,
): TileSays | undefined {
  if (references.length === 0) return undefined
  const density = dipDensity(gainG, references, facts.targetGramsPerMl)
  return dipAlarm(density, facts.targetGramsPerMl, facts.toleranceGramsPerMl) ?? 'nothing'
}

/** The latest tiles, with one more. */
export const withTile = (tiles: readonly DippedTile[], tile: DippedTile): readonly DippedTile[] =>
  [...tiles, tile].slice(-MOST_DIPPED_TILES)
