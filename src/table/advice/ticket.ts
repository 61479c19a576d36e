import { type FiredPot, lnToShelf } from '../../engine/fired/run-curve.ts'
import { type Subject, subjectCoats, subjectKey, subjectsOn } from '../../engine/fired/subjects.ts'
import { type TileAsked, tileValues, UNTRIED_PAIR, untestedGlaze } from '../../engine/fired/tile-value.ts'
import { type CoatOnWall, MOST_DOSE_PER_MM } from '../../engine/melt/coats.ts'
import { Z90 } from '../../engine/numeric/spread.ts'
import { factorsOf } from '../fired/lesson.ts'
import { pairsProved } from '../fired/pairs.ts'
import { flowOf, hasTile, meltCoats, toldFlowOf } from '../firing/glaze-flow.ts'
import { zonesAtEnd } from '../forecast/hypothetical-dip.ts'
import { profileOf } from '../forecast/shape-inputs.ts'
import { planOf, potsOnTable } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'

/** What a flow tile should try, and how to make and read it. */
export interface TileTicket extends Subject {
  /** Pots of this board that carry it outside. */
  readonly pots: number
  /** Pots of a firing whose way into the kiln it may change. */
  readonly decides: number
  readonly dips: readonly number[]
  readonly bandMm: number
}

/** Stripes of one, two and three dips tell the square law from anything else; 60 mm of band keeps R under L/2. */
const STRIPES = [1, 2, 3] as const
const BAND_MM = 60
/** A stack that is kept is fired again: so often, with this firing. Our choice. */
const FIRINGS = { once: 1, kept: 2 }

/** Nothing is known nearer than this, ln dose. */
const LEAST_SD = 0.05

/** ln dose of a subject as it is known, mean and sd; a tile would be its first. */
interface Known {
  readonly mean: number
  readonly sd: number
  readonly untried: boolean
}

function knownOf(table: Table, { over, under }: Subject, glazes: ReturnType<typeof untestedGlaze>): Known {
  const told = toldFlowOf(table, over, under)
  const untried = !hasTile(table, over, under)
  const lesson = factorsOf(table).find(
    ({ key, cone }) => key === subjectKey({ over, under }) && cone === undefined,
  )
  if (told && lesson) return { mean: Math.log(told.likelyPerMm) + lesson.lnMean, sd: lesson.lnSd, untried }
  if (told && !untried) {
    const now = flowOf(table, over, under) ?? told
    return {
      mean: Math.log(now.likelyPerMm),
      sd: Math.max(LEAST_SD, Math.log(now.highPerMm / now.lowPerMm) / (2 * Z90)),
      untried: told.carried,
    }
  }
  if (under === null) return { ...glazes, untried }
  const each = [over, under].map((glaze) => knownOf(table, { over: glaze, under: null }, glazes))
  const mean = Math.max(...each.map((one) => one.mean)) + UNTRIED_PAIR.mean
  return { mean, sd: told ? UNTRIED_PAIR.sd : glazes.sd, untried }
}

/** Whether a pot with it may be called clear before a tile was fired: of a carried dose, or a pair that was proved. */
const clears = (table: Table, { over, under }: Subject): boolean =>
  under === null
    ? hasTile(table, over, null)
    : pairsProved(table).some((pair) => pair.over === over && pair.under === under)

/** Pots alike in shape and coats, as they will go into the kiln: what is on them, then the rest of their plan. */
interface Alike {
  readonly pot: FiredPot
  readonly subjects: readonly Subject[]
  readonly firings: number
  count: number
}

function boardOf(table: Table): readonly Alike[] {
  const seen = new Map<string, Alike | undefined>()
  const made = (pot: PotState): Alike | undefined => {
    const zones = zonesAtEnd(table, pot)
    if (!zones) return undefined
    const { coats } = meltCoats(table, zones)
    return {
      pot: { profile: profileOf(pot.facts), coats },
      subjects: subjectsOn(coats),
      firings: table.stacks[pot.facts.stackId] ? FIRINGS.kept : FIRINGS.once,
      count: 0,
    }
  }
  for (const pot of potsOnTable(table)) {
    const { shape, absorption } = pot.facts
    const key = JSON.stringify([shape, absorption, pot.damp?.water, planOf(table, pot), pot.dips])
    if (!seen.has(key)) seen.set(key, made(pot))
    const alike = seen.get(key)
    if (alike) alike.count++
  }
  return [...seen.values()].filter((one) => one !== undefined)
}

/** Coats with the dose that each is likeliest to have, told or not. */
const likeliest = (coats: readonly CoatOnWall[], of: (subject: Subject) => Known): readonly CoatOnWall[] =>
  subjectCoats(coats).map(({ coat, subject }) => {
    const perMm = Math.min(MOST_DOSE_PER_MM, Math.exp(of(subject).mean))
    return { ...coat, dose: { likelyPerMm: perMm, highPerMm: perMm } }
  })

/**
 * The flow tile that should ride along with this board's firing: of glazes and pairs without one, that which decides most
 * of what goes on a slab; null where none would change enough.
 */
export function rideAlong(table: Table): TileTicket | null {
  const board = boardOf(table)
  const tested = Object.keys(table.buckets).flatMap((id) => toldFlowOf(table, id, null)?.likelyPerMm ?? [])
  const glazes = untestedGlaze(tested)
  const known = new Map<string, Known>()
  const of = (subject: Subject): Known => {
    const key = subjectKey(subject)
    const found = known.get(key) ?? knownOf(table, subject, glazes)
    known.set(key, found)
    return found
  }
  const asked = new Map<string, TileAsked & { readonly of: Subject; readonly pots: number }>()
  for (const { pot, subjects, firings, count } of board) {
    const coats = likeliest(pot.coats, of)
    for (const subject of subjects) {
      const { mean, sd, untried } = of(subject)
      if (!untried) continue
      const shelf = mean + lnToShelf({ ...pot, coats }, subject)
      const key = subjectKey(subject)
      const before = asked.get(key)
      asked.set(key, {
        subject: key,
        of: subject,
        lnMean: mean,
        lnSd: sd,
        unclear: !clears(table, subject),
        firings: Math.max(firings, before?.firings ?? 0),
        shelfLn: [...(before?.shelfLn ?? []), ...Array<number>(count).fill(shelf)],
        pots: (before?.pots ?? 0) + count,
      })
    }
  }
  const [most] = tileValues([...asked.values()])
  const one = most && asked.get(most.subject)
  return one ? { ...one.of, pots: one.pots, decides: most.decides, dips: STRIPES, bandMm: BAND_MM } : null
}
