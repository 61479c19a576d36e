/** Shelves and posts that are left while levels are built. Lengths in mm. */
import type { Column, Kiln, Shelf } from './contract.ts'
import { shelfAreaMm2 } from './region.ts'

/** Posts under a shelf. */
export const THREE = 3

export interface Stock {
  readonly posts: Map<number, number>
  readonly shelves: Map<string, number>
}

/** All that a kiln has. */
export function stockOf(kiln: Kiln): Stock {
  const posts = new Map<number, number>()
  for (const { lengthMm, count } of kiln.posts) posts.set(lengthMm, (posts.get(lengthMm) ?? 0) + count)
  return { posts, shelves: new Map(kiln.shelves.map(({ id, count }) => [id, count])) }
}

/** Cut in two: lies left or right. */
export const isHalf = (shelf: Shelf): boolean => shelf.kind === 'halfRound' || shelf.kind === 'halfBox'

/** Shelves left that lie in a column, the largest first. */
export const shelvesFor = (kiln: Kiln, stock: Stock, column: Column): readonly Shelf[] =>
  kiln.shelves
    .filter((shelf) => isHalf(shelf) === (column !== 'whole') && (stock.shelves.get(shelf.id) ?? 0) > 0)
    .sort((a, b) => shelfAreaMm2(b) - shelfAreaMm2(a) || (a.id < b.id ? -1 : 1))

/** How many shelves are left for a column. */
export const shelvesLeft = (kiln: Kiln, stock: Stock, column: Column): number =>
  shelvesFor(kiln, stock, column).reduce((sum, { id }) => sum + (stock.shelves.get(id) ?? 0), 0)

/** Takes one; a stock that lacks it goes below zero. */
export const takeShelf = (stock: Stock, { id }: Shelf): void => {
  stock.shelves.set(id, (stock.shelves.get(id) ?? 0) - 1)
}

/** Takes three posts of each piece; a stock that lacks them goes below zero. */
export const takePosts = (stock: Stock, pieces: readonly number[]): void => {
  for (const piece of pieces) stock.posts.set(piece, (stock.posts.get(piece) ?? 0) - THREE)
}

/** The shortest single post, three of it left, that is `needMm` long; with `onEnd` also two on end. Null if none is. */
export function postFor(stock: Stock, needMm: number, onEnd: boolean): readonly number[] | null {
  const lengths = [...stock.posts]
    .filter(([, count]) => count >= THREE)
    .map(([length]) => length)
    .sort((a, b) => a - b)
  const single = lengths.find((length) => length >= needMm)
  if (single !== undefined) return [single]
  if (!onEnd) return null
  let best: readonly number[] | null = null
  for (const [i, a] of lengths.entries())
    for (const b of lengths.slice(i)) {
      if (a + b < needMm || (a === b && (stock.posts.get(a) ?? 0) < 2 * THREE)) continue
      if (!best || a + b < best[0]! + best[1]!) best = [b, a]
    }
  return best
}

/** Length of posts on end, mm. */
export const sumMm = (pieces: readonly number[]): number => pieces.reduce((sum, one) => sum + one, 0)
