import { expect, test } from 'vitest'
import { clocksOnApp, importsOnApp } from './app.ts'
import { at, buildPage } from './built.ts'
import { killOften } from './kill.ts'
import { clocksOnJournal } from './sitting.ts'

/** On the app; as many again on the journal alone, where hits come faster than any hand. */
const KILLS = process.env.PROVE
  ? { app: 100, journal: 100, imports: 150 }
  : { app: 12, journal: 8, imports: 3 }
const SEED = Number(process.env.KILL_SEED ?? 20_261_125)

test.each([
  [KILLS.app, 'a sitting with five clocks in the app', () => clocksOnApp(at('dist')), 1],
  [KILLS.imports, 'imports into the app', () => importsOnApp(at('dist')), 1],
  [KILLS.journal, 'five clocks on the journal alone', () => clocksOnJournal(buildPage()), 3],
] as const)(
  '%d kills at random moments of %s: nothing told as saved is lost',
  async (kills, name, sitting, least) => {
    const { acknowledged, hits, losses } = await killOften(sitting(), kills, SEED)
    console.log(
      `${name}: ${kills} kills, ${hits} hits, ${acknowledged} records told as saved, ${losses.length} lost`,
    )
    expect(losses).toEqual([])
    // The proof is worth something only if much was saved before the kills.
    expect(acknowledged).toBeGreaterThan(kills * least)
  },
)
