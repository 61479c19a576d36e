import type { Place } from '../../../shared/nouns.ts'

/** Whether two places are one. */
export const samePlace = (a: Place, b: Place): boolean => a.board === b.board && a.spot === b.spot

/** Places on one ware board. */
export const SPOTS_PER_BOARD = 4

/** First number of a new table, so that a number is never taken for a coat or a second. Our choice. */
const FIRST_NUMBER = 31

/** The next pot number: one past the highest on the table. */
export const nextNumber = (taken: readonly number[]): number =>
  taken.length === 0 ? FIRST_NUMBER : Math.max(...taken) + 1

/** The first free place, board by board from A. */
export function freePlace(taken: readonly Place[]): Place {
  const key = (place: Place) => `${place.board}${place.spot}`
  const used = new Set(taken.map(key))
  for (let b = 0; ; b++) {
    const board = boardName(b)
    for (let spot = 1; spot <= SPOTS_PER_BOARD; spot++) {
      const place = { board, spot }
      if (!used.has(key(place))) return place
    }
  }
}

/** A, B, ..., Z, AA, AB, ... */
function boardName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26))
  return index < 26 ? letter : boardName(Math.floor(index / 26) - 1) + letter
}

/** Boards with a pot on them and those before, and one more that is free. */
export function boardsOf(places: readonly Place[]): readonly string[] {
  const used = new Set(places.map(({ board }) => board))
  const boards: string[] = []
  for (let i = 0; used.size > 0; i++) {
    const board = boardName(i)
    boards.push(board)
    used.delete(board)
    if (i >= BOARDS_MOST) break
  }
  return [...boards, boardName(boards.length)]
}

/** A to ZZ. */
const BOARDS_MOST = 26 * 27
