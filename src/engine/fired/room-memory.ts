/**
 * Which board of a room dries faster, from its touches: ln(waited/told) = sitting + board + place + noise, all normal, so
 * the posterior is a system of linear equations. What a sitting's weather does to all boards is no board's.
 */

import { inRange } from '../check.ts'
import { normalCdf } from '../numeric/spread.ts'
import { factorsOf, solvedBy } from '../numeric/symmetric.ts'

/** A wait that was looked at: ln of how long it took over what was told, what the waits' own lesson says taken off. */
export interface WaitSeen {
  readonly sitting: string
  readonly board: string
  /** The place on its board. */
  readonly place: string
  readonly lnOver: number
}

/** sds of the four parts, ln. */
export interface RoomSpread {
  readonly sitting: number
  readonly board: number
  readonly place: number
  readonly noise: number
}

/** How a board's waits compare with those of the others. */
export interface BoardDries {
  readonly board: string
  /** ln of its waits over the others': positive dries slower. */
  readonly ln: number
  readonly sd: number
  /** Sittings that touched it. */
  readonly sittings: number
  readonly touches: number
  /** Sure enough to be said. */
  readonly speak: boolean
}

export interface RoomMemory {
  readonly boards: readonly BoardDries[]
  /** Where late pots should stand; null before the second sitting, or with one board. */
  readonly fastest: string | null
}

/** Assumptions. */
export const ROOM_SPREAD: RoomSpread = { sitting: 0.3, board: 0.15, place: 0.1, noise: 0.35 }
const LEAST_SITTINGS = 3
const PROPOSES_FROM = 2
const DIFFERS = 0.1
const SURE = 0.9

const namesOf = (all: readonly string[]): readonly string[] => [...new Set(all)].sort()

/**
 * What a room's touches say of its boards, by name. The order given does not matter. RangeError for a value that is no
 * number.
 */
export function roomMemory(seen: readonly WaitSeen[], spread: RoomSpread = ROOM_SPREAD): RoomMemory {
  for (const [i, { lnOver }] of seen.entries()) inRange(`seen[${i}].lnOver`, lnOver, -10, 10)
  const sittings = namesOf(seen.map(({ sitting }) => sitting))
  const boards = namesOf(seen.map(({ board }) => board))
  const placeOf = ({ board, place }: WaitSeen): string => JSON.stringify([board, place])
  const places = namesOf(seen.map(placeOf))
  const fromBoard = sittings.length
  const fromPlace = fromBoard + boards.length
  const n = fromPlace + places.length
  const matrix = new Float64Array(n * n)
  const right = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    const sd = i < fromBoard ? spread.sitting : i < fromPlace ? spread.board : spread.place
    matrix[i * n + i] = 1 / sd ** 2
  }
  const per = 1 / spread.noise ** 2
  const inOrder = seen.toSorted((a, b) => a.lnOver - b.lnOver)
  for (const one of inOrder) {
    const at = [
      sittings.indexOf(one.sitting),
      fromBoard + boards.indexOf(one.board),
      fromPlace + places.indexOf(placeOf(one)),
    ]
    for (const i of at) {
      right[i] = right[i]! + per * one.lnOver
      for (const j of at) matrix[i * n + j] = matrix[i * n + j]! + per
    }
  }
  const factors = factorsOf(matrix, n)
  const mean = solvedBy(factors, right)
  const against = boards.map((board, b): BoardDries => {
    const contrast = new Float64Array(n)
    boards.forEach((_, k) => {
      contrast[fromBoard + k] = k === b ? 1 : -1 / Math.max(1, boards.length - 1)
    })
    const ln = contrast.reduce((sum, weight, i) => sum + weight * mean[i]!, 0)
    const spreads = solvedBy(factors, contrast)
    const sd = Math.sqrt(contrast.reduce((sum, weight, i) => sum + weight * spreads[i]!, 0))
    const mine = seen.filter((one) => one.board === board)
    const count = new Set(mine.map(({ sitting }) => sitting)).size
    const alike = normalCdf((Math.log(1 + DIFFERS) - ln) / sd) - normalCdf((Math.log(1 - DIFFERS) - ln) / sd)
    return {
      board,
      ln,
      sd,
      sittings: count,
      touches: mine.length,
      speak: boards.length > 1 && count >= LEAST_SITTINGS && 1 - alike > SURE,
    }
  })
  const told = boards.length > 1 && sittings.length >= PROPOSES_FROM
  const fastest = told ? against.reduce((best, one) => (one.ln < best.ln ? one : best)).board : null
  return { boards: against, fastest }
}
