import '../../src/table/forecast/walls.ts'
import { forecastOf } from '../../src/table/forecast/forecast.ts'
import type { Table } from '../../src/table/model/state.ts'
import { numbers } from '../fixtures/numbers.ts'
import type { BenchPage } from './bench.ts'

/** What a sitting came to. */
export interface Sitting {
  /** Hits by what they were for; slips and what puts them right are counted apart. */
  readonly starts: number
  readonly openings: number
  readonly stirs: number
  readonly slips: number
  /** Rules that were broken, in words; none is hoped for. */
  readonly broken: readonly string[]
}

const MIN_S = 60
/** Looks at the bench after which a sitting has gone wrong. */
const MOST_LOOKS = 1500
/** Longest that hands dawdle, s. */
const DAWDLE_S = 10 * MIN_S
/** Part of the hits before which hands dawdle, and of those that slip. */
const DAWDLES = 0.15
const SLIPS = 0.15

/**
 * Hands that do what the bar says until `coats` dips are on: a minute a dip, three to open a bucket, one to stir. With
 * a seed they dawdle now and then, and slip: a hit too many that is taken back, a hold, a page that is loaded anew.
 */
export async function sit(bench: BenchPage, coats: number, seed?: number): Promise<Sitting> {
  const next = seed === undefined ? () => 1 : numbers(seed)
  const told = { starts: 0, openings: 0, stirs: 0, slips: 0 }
  const coatsOn = (table: Table) => Object.values(table.pots).reduce((sum, pot) => sum + pot.dips.length, 0)
  for (let i = 0; i < MOST_LOOKS; i++) {
    if (told.starts >= coats && coatsOn(await bench.table()) >= coats) break
    const label = await bench.label()
    // A pot that was asked about before the order was told stays on the card until it is answered.
    if (label === 'DRY') {
      await bench.hit()
      continue
    }
    if (label !== 'STIRRED' && label !== 'START') {
      await bench.pass(label === 'FOOT CLEAN' ? 3 : 15)
      continue
    }
    if (next() < DAWDLES) {
      await bench.pass(Math.round(next() * DAWDLE_S))
      continue
    }
    if (next() < SLIPS) {
      told.slips++
      await slip(bench, next)
      continue
    }
    if (label === 'STIRRED') {
      const opens = (await bench.face.textContent())?.includes('Open ') ?? false
      await until(bench, (await clock(bench)) + (opens ? 3 * MIN_S : MIN_S) * 1000 - HIT_MS)
      if ((await bench.label()) !== 'STIRRED') continue
      await bench.hit()
      if (opens) told.openings++
      else told.stirs++
    } else {
      const from = await clock(bench)
      const before = coatsOn(await bench.table())
      await bench.hit()
      // The stir may have gone stale between the look and the hit: the bar said STIRRED by then.
      if ((await bench.table()).hits.at(-1)?.kind === 'stirred') {
        told.stirs++
        continue
      }
      // A stir that went stale while its dip was announced: the hit was refused.
      if (coatsOn(await bench.table()) === before) continue
      told.starts++
      await whole(bench, from)
    }
  }
  return { ...told, broken: broken(await bench.table()) }
}

const clock = (bench: BenchPage): Promise<number> => bench.page.evaluate(() => Date.now())

/** From deciding to hit the bar to the hit, ms of the page's clock. */
const HIT_MS = 450

/** Lets time pass to a moment, in pieces short of being away. */
async function until(bench: BenchPage, at: number): Promise<void> {
  for (let left = at - (await clock(bench)); left > 100; left = at - (await clock(bench)))
    await bench.pass(Math.min(left / 1000, 50))
}

/** A dip's minute, seen throughout its count: a gap would leave the dose in doubt. */
async function whole(bench: BenchPage, from: number): Promise<void> {
  for (let ms = 0; ms < 9800; ms += 1400) await bench.page.clock.fastForward(1400)
  await until(bench, from + MIN_S * 1000)
}

/** Something goes otherwise, and is put right as a person would. */
async function slip(bench: BenchPage, next: () => number): Promise<void> {
  const { page } = bench
  const which = Math.floor(next() * 3)
  if (which === 0) {
    // Called away, and back.
    await page.clock.runFor(450)
    await page.locator('.corner-hold').tap()
    await bench.pass(Math.round(20 + next() * 200))
    await bench.hit()
  } else if (which === 1) {
    // The phone is loaded anew.
    await page.reload()
    await page.locator('.bench').waitFor()
    await bench.told()
    await bench.pass(1)
  } else {
    // A hit too early, taken back.
    await bench.hit()
    if ((await page.locator('.count').count()) > 0) {
      await page.clock.runFor(600)
      await page.locator('.count').tap()
      await page.clock.runFor(50)
      await bench.settled()
    } else {
      await page.clock.runFor(450)
      await page.locator('.strip-take-back').tap()
      await page.clock.runFor(50)
      await bench.settled()
    }
  }
}

/** Rules a table shows to have been broken: stale stirs, waits cut short, coats twice or out of order. */
function broken(table: Table): string[] {
  const said: string[] = []
  for (const pot of Object.values(table.pots)) {
    pot.dips.forEach((dip, i) => {
      if (dip.unstirred) said.push(`${pot.facts.number} unstirred`)
      if (dip.unsure) said.push(`${pot.facts.number} unsure`)
      if (dip.coat !== i) said.push(`${pot.facts.number} coat ${dip.coat} as ${i}`)
      if (i === 0) return
      const before = forecastOf(table, { ...pot, dips: pot.dips.slice(0, i) })
      if (before && dip.tappedAt < before.ready.upper) said.push(`${pot.facts.number} too soon`)
    })
  }
  return said
}
