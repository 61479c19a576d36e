import { whenMade } from '../fired/fired-coats.ts'
import { firedOf } from '../fired/fired-pot.ts'
import { waterNowG } from '../forecast/saturation.ts'
import { coneDown } from '../load/loads.ts'
import { coatsOn } from '../model/plan.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import { bucketOfCoat } from '../model/uses.ts'
import { placeIn } from './queue.ts'
import { thicknessOf } from './story.ts'

/** A part of a story as it is played: so long, ms. `at`: when it was, table time, ms, where that is known. */
export type Scene = {
  readonly ms: number
  readonly at?: number
  /** Coats that are on when it ends. */
  readonly coats: number
} & (
  | { readonly what: 'bare' | 'waxed' | 'found' }
  /** A coat goes on, so thick where it lies thickest, mm; undefined where that cannot be told. */
  | { readonly what: 'coat'; readonly dip: DipState; readonly likelyMm: number | undefined }
  /** It dries: water in wall and coats, grams, at even shares of the part; nothing where that cannot be told. */
  | { readonly what: 'wait'; readonly until: number; readonly waterG: readonly number[] }
  | { readonly what: 'loaded'; readonly place: string }
  /** In the kiln: it melts towards the end. */
  | { readonly what: 'fire'; readonly until: number | undefined; readonly cone: string | undefined }
  | { readonly what: 'photo'; readonly photoId: string }
)

/** All of it, in so long at most: a class has a minute. */
const MOST_MS = 60_000
const LASTS_MS = {
  bare: 2000,
  waxed: 1500,
  coat: 3500,
  wait: 3500,
  loaded: 2500,
  fire: 8000,
  found: 4000,
  photo: 5000,
}
/** Moments of a wait at which the wall is computed. */
const MOMENTS = 8

type Bare<Kind> = Kind extends Scene ? Omit<Kind, 'ms'> : never

/**
 * How much of a wait is over at a share of the time it is played in: what happens first is shown slowest, as a wall dries
 * fastest then.
 */
export const waitedShare = (share: number): number => share ** 2

function waterIn(table: Table, pot: PotState, from: number, until: number): readonly number[] {
  const known =
    !pot.uncounted &&
    pot.coatsCounted === undefined &&
    coatsOn(pot).every(({ bucketId }) => bucketOfCoat(table, bucketId) !== undefined)
  if (!known) return []
  return Array.from({ length: MOMENTS + 1 }, (_, i) =>
    waterNowG(whenMade(table, pot), pot, from + waitedShare(i / MOMENTS) * (until - from)),
  )
}

/** A pot's story as it is played, from what was logged of it; what nobody noted is left out. */
export function filmOf(table: Table, pot: PotState): readonly Scene[] {
  const { found, loadId, photos } = firedOf(pot)
  const load = loadId === undefined ? undefined : table.loads?.[loadId]
  const place = placeIn(table, pot)
  const dips = coatsOn(pot)
  const thick = thicknessOf(table, pot)
  const coats = dips.length
  const scenes: Bare<Scene>[] = [{ what: 'bare', coats: 0 }]
  if (pot.waxedAt !== undefined) scenes.push({ what: 'waxed', coats: 0, at: pot.waxedAt })
  for (const [i, dip] of dips.entries()) {
    scenes.push({ what: 'coat', coats: i + 1, at: dip.outAt, dip, likelyMm: thick.get(dip.dipId) })
    const next = dips[i + 1]
    const until = next ? next.outAt - next.holdS * 1000 : load?.litAt
    if (until !== undefined && until > dip.outAt) {
      const waterG = waterIn(table, { ...pot, dips: dips.slice(0, i + 1) }, dip.outAt, until)
      scenes.push({ what: 'wait', coats: i + 1, at: dip.outAt, until, waterG })
    }
  }
  if (place !== undefined) scenes.push({ what: 'loaded', coats, place })
  if (load?.litAt !== undefined || found) {
    const down = load && coneDown(load)
    const lit = load?.litAt === undefined ? {} : { at: load.litAt }
    scenes.push({
      what: 'fire',
      coats,
      ...lit,
      until: load?.offAt,
      cone: down?.cone,
    })
  }
  if (found) scenes.push({ what: 'found', coats, at: found.at })
  const photo = photos.findLast(({ side }) => side === 'front') ?? photos.at(-1)
  if (photo) scenes.push({ what: 'photo', coats, at: photo.at, photoId: photo.photoId })
  const all = scenes.reduce((sum, { what }) => sum + LASTS_MS[what], 0)
  const pace = Math.min(1, MOST_MS / all)
  return scenes.map((scene): Scene => ({ ...scene, ms: LASTS_MS[scene.what] * pace }))
}

/** Which part is on at a moment of the playing, and what share of it is over. */
export function sceneAt(
  scenes: readonly Scene[],
  ms: number,
): { readonly index: number; readonly share: number } {
  let from = 0
  for (const [index, scene] of scenes.entries()) {
    if (ms < from + scene.ms) return { index, share: Math.max(0, (ms - from) / scene.ms) }
    from += scene.ms
  }
  return { index: scenes.length - 1, share: 1 }
}
