/** The inside of a pot in the firing: melt comes down the wall and pools in the well. */

import type { OutlinePoint, Profile } from '../contract.ts'
import { type CoatOnWall, coatsOn, layCoats, MELT_PER_DRY } from './coats.ts'
import { type Melt, toMl } from './flow.ts'
import { downwards, pathAlong } from './path.ts'

/** Nearer to level than 10 deg the inside is the floor of the well, where melt levels out. */
const LEVEL = Math.sin((10 * Math.PI) / 180)

/** The inside wall with its melt, and the floor below it with what lies there, mm3 per radian. */
export interface Well {
  readonly melt: Melt
  readonly floor: readonly OutlinePoint[]
  readonly floorMm3: number
}

export interface WellPool {
  readonly poolMl: number
  /** Depth over the middle of the floor once the pool is level, mm. */
  readonly depthMm: number
}

/** The floor of an inside outline, from its middle out: pieces nearer to level than 10 deg. */
function floorOf(inner: readonly OutlinePoint[]): readonly OutlinePoint[] {
  let end = 0
  while (end + 1 < inner.length - 1) {
    const [a, b] = [inner[end]!, inner[end + 1]!]
    if (b.zMm - a.zMm > LEVEL * Math.hypot(b.rMm - a.rMm, b.zMm - a.zMm)) break
    end++
  }
  return inner.slice(0, end + 1)
}

/** Dry coat lying on the floor pieces, as melt, mm3 per radian. */
function floorVolume(floor: readonly OutlinePoint[], coats: readonly CoatOnWall[], upper: boolean): number {
  let sum = 0
  for (let i = 1; i < floor.length; i++) {
    const [a, b] = [floor[i - 1]!, floor[i]!]
    const middleMm = (a.zMm + b.zMm) / 2
    const area = ((a.rMm + b.rMm) / 2) * Math.hypot(b.rMm - a.rMm, b.zMm - a.zMm)
    for (const coat of coats)
      if (coat.fromMm <= middleMm + 1e-6 && coat.toMm >= middleMm)
        sum += area * MELT_PER_DRY * (upper ? coat.upperMm : coat.likelyMm)
  }
  return sum
}

/** Lays the inside coats on wall and floor. `upper` takes the upper thickness and dose. */
export function layWell(profile: Profile, coats: readonly CoatOnWall[], upper: boolean): Well {
  const inside = coatsOn(coats, 'inside')
  const floor = floorOf(profile.inner)
  const line = downwards(profile, 'inside')
  const wall = line.slice(0, line.length - floor.length + 1)
  const path = pathAlong(wall, 0, 0, 1)
  return {
    melt: layCoats(path, wall, inside, upper),
    floor,
    floorMm3: floorVolume(floor, inside, upper),
  }
}

/** What has gathered in the well, and how deep it stands there once level. */
export function poolOf(profile: Profile, well: Well): WellPool {
  const volume = well.floorMm3 + well.melt.gone
  let left = volume
  let depthMm = 0
  // Per radian a frustum holds dz (a^2 + ab + b^2)/6; only the last piece is filled in part.
  for (let i = 1; i < profile.inner.length && left > 0; i++) {
    const [a, b] = [profile.inner[i - 1]!, profile.inner[i]!]
    const rise = b.zMm - a.zMm
    const holds = (rise * (a.rMm ** 2 + a.rMm * b.rMm + b.rMm ** 2)) / 6
    if (rise === 0) continue
    let share = 1
    if (holds > left) {
      let [low, high] = [0, 1]
      for (let k = 0; k < 40; k++) {
        share = (low + high) / 2
        const r = a.rMm + share * (b.rMm - a.rMm)
        if ((rise * share * (a.rMm ** 2 + a.rMm * r + r ** 2)) / 6 < left) low = share
        else high = share
      }
    }
    depthMm += share * rise
    left -= Math.min(left, holds)
  }
  return {
    poolMl: toMl(volume),
    depthMm,
  }
}
