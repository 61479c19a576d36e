import { expect, test } from 'vitest'
import { buildPage } from './built.ts'
import { killOften } from './kill.ts'
import { clocksOnJournal } from './sitting.ts'

const KILLS = process.env.PROVE ? 100 : 15
const SEED = Number(process.env.KILL_SEED ?? 20_261_125)

test(`${KILLS} kills at random moments of a sitting with five clocks: no hit told as saved is lost`, async () => {
  const { acknowledged, hits, losses } = await killOften(clocksOnJournal(buildPage()), KILLS, SEED)
  console.log(`${KILLS} kills, ${hits} hits, ${acknowledged} records told as saved, ${losses.length} lost`)
  expect(losses).toEqual([])
  // The proof is worth something only if much was saved before the kills.
  expect(acknowledged).toBeGreaterThan(KILLS * 3)
})
