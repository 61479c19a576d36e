import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { clocksOnApp, importsOnApp } from './app.ts'
import { at, buildPage } from './built.ts'
import { type Killed, killOften } from './kill.ts'
import { copyOnApp, kilnOnApp, migrationOnApp, packingOnJournal, photosOnApp, updatesOnApp } from './kinds.ts'
import { meetingsOnApp } from './meetings.ts'
import { clocksOnJournal, type Sitting } from './sitting.ts'

/** Kills of each kind, a slice of `npm test`; 440 in the long proof and 150 round an import, on a profile that is opened again each time. */
const KILLS = process.env.PROVE
  ? {
      app: 70,
      kiln: 60,
      journal: 70,
      imports: 150,
      packing: 40,
      migration: 40,
      update: 40,
      copy: 40,
      meeting: 40,
      photo: 40,
    }
  : {
      app: 1,
      kiln: 1,
      journal: 1,
      imports: 1,
      packing: 1,
      migration: 0,
      update: 0,
      copy: 0,
      meeting: 0,
      photo: 0,
    }
const SEED = Number(process.env.KILL_SEED ?? 20_261_125)

const folders: string[] = []
afterAll(() =>
  Promise.all(folders.map((folder) => rm(folder, { recursive: true, force: true, maxRetries: 5 }))),
)

async function updates() {
  const folder = await mkdtemp(join(tmpdir(), 'bucketside-dist-'))
  folders.push(folder)
  return updatesOnApp(at('dist'), folder)
}

/** Kills on one profile: imports would make a journal that no phone has. */
const ON_ONE_PROFILE = 25

/** The same on profile after profile, each opened again after every kill. */
async function killAll(sitting: () => Promise<Sitting> | Sitting, kills: number): Promise<Killed> {
  let all: Killed = { acknowledged: 0, hits: 0, losses: [] }
  for (let done = 0; done < kills; done += ON_ONE_PROFILE) {
    const { acknowledged, hits, losses } = await killOften(
      await sitting(),
      Math.min(ON_ONE_PROFILE, kills - done),
      SEED + done,
    )
    all = {
      acknowledged: all.acknowledged + acknowledged,
      hits: all.hits + hits,
      losses: [...all.losses, ...losses],
    }
    console.log(
      `${Math.min(kills, done + ON_ONE_PROFILE)} of ${kills}: ${all.acknowledged} told as saved, ${all.losses.length} lost`,
    )
  }
  return all
}

// The last number: so many records a kill were told as saved at the least, or the proof is worth nothing.
const KINDS = [
  [KILLS.app, 'a sitting with five clocks in the app', () => clocksOnApp(at('dist')), 1],
  [KILLS.kiln, 'the kiln and the opening of its lid', () => kilnOnApp(at('dist')), 0],
  [KILLS.imports, 'imports into the app', () => importsOnApp(at('dist')), 1],
  [KILLS.journal, 'five clocks on the journal alone', () => clocksOnJournal(buildPage()), 3],
  [KILLS.packing, 'packing', () => packingOnJournal(buildPage()), 100],
  [KILLS.migration, 'a start on records of an earlier version', () => migrationOnApp(at('dist')), 100],
  [KILLS.update, 'updates under five clocks', updates, 0],
  [KILLS.meeting, 'meetings with other phones, by codes and by files', () => meetingsOnApp(at('dist')), 1],
  [KILLS.photo, 'keeping photos of pots', () => photosOnApp(at('dist')), 0],
  [KILLS.copy, 'writing the second copy', () => copyOnApp(at('dist')), 0],
] as const
test.each(KINDS.filter(([kills]) => kills > 0))(
  '%d kills at random moments of %s: nothing told as saved is lost',
  async (kills, name, sitting, least) => {
    const { acknowledged, hits, losses } = await killAll(sitting, kills)
    console.log(
      `${name}: ${kills} kills, ${hits} hits, ${acknowledged} records told as saved, ${losses.length} lost`,
    )
    expect(losses).toEqual([])
    expect(acknowledged).toBeGreaterThan(process.env.PROVE ? kills * least : 0)
  },
)
