import type { AppGuess } from '../../../shared/opening.ts'
import { nextPot } from '../../engine/fired/flow-lesson.ts'
import { type Guessed, type GuessScore, guessScore } from '../../engine/fired/guess-score.ts'
import { FIRST_MM, runAt, runCurve, sharesOf } from '../../engine/fired/run-curve.ts'
import { profileOf } from '../forecast/shape-inputs.ts'
import type { LoadState } from '../model/load-state.ts'
import type { PotState, Table } from '../model/state.ts'
import { firedZones, isSure, toldCoats } from './fired-coats.ts'
import { firedOf } from './fired-pot.ts'
import { heatAt } from './heats.ts'
import { lessonIn } from './lesson.ts'
import { isTold, judgedPots, seenOf } from './results.ts'

const round = (mm: number): number => Math.round(mm * 10) / 10

/**
 * How far the app thinks that a pot of a load has run, by its tiles, all results so far and the cones seen; undefined where
 * its coats are not known or a glaze has no tile. What nobody took yet counts as well: a guess moves no plan. Of an opened
 * load what was judged since its lid went up counts for nothing.
 */
export function appGuess(table: Table, pot: PotState, load: LoadState): AppGuess | undefined {
  if (!isSure(table, pot)) return undefined
  const fired = {
    profile: profileOf(pot.facts),
    coats: toldCoats(table, firedZones(table, pot), load.firing),
  }
  const curve = runCurve(fired)
  if (!curve) return undefined
  const shares = sharesOf(fired, curve, { kind: 'shelf' })
  const most = shares.toSorted((a, b) => b.share - a.share)[0]
  const lesson = most && lessonIn(table, most.subject, load.firing, load.openedAt)
  const storey = load.things[pot.facts.lidOf ?? pot.facts.potId]?.storey
  // Nothing that counts here takes it to the shelf: it runs as told.
  const k = lesson ? nextPot(lesson, heatAt(load, storey)) : { low: 0.5, likely: 1, high: 2 }
  // Less than a millimetre is no run to the eye, and is judged as none.
  const at = (factor: number): number => {
    const mm = runAt(curve, Math.log(factor))
    return mm < FIRST_MM ? 0 : round(mm)
  }
  return { lowMm: at(k.low), likelyMm: at(k.likely), highMm: at(k.high), roomMm: round(curve.roomMm) }
}

/**
 * How person and app have told the runs of the opened pots that are known and that nobody left out. A guess of the whole room
 * means on the shelf.
 */
export function guessesScored(table: Table): GuessScore {
  return guessScore(
    judgedPots(table).flatMap((judged): Guessed[] => {
      const { pot, found } = judged
      const { guess, appGuess: app } = firedOf(pot)
      const seen = seenOf(pot, found)
      if (!app || !seen || !isTold(judged)) return []
      const { roomMm, likelyMm, lowMm, highMm } = app
      const personMm = guess === undefined ? null : guess.mm === 'shelf' ? roomMm : guess.mm
      return [{ roomMm, personMm, appMm: likelyMm, lowMm, highMm, found: seen }]
    }),
  )
}
