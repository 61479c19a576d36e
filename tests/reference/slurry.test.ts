import { describe, expect, it } from 'vitest'
import { solidsFraction } from '../../src/engine/slop/slop.ts'
import { dryTo, waterTo } from '../../src/engine/slop/slurry.ts'
import { near } from './near.ts'

/** Dry matter and water in a litre, g, by the solids fraction that the coat is computed from. */
const dryGramsPerLitre = (gramsPerMl: number, solidsGravity: number): number =>
  1000 * solidsGravity * solidsFraction({ gramsPerMl, solidsGravity })
const waterGramsPerLitre = (gramsPerMl: number, solidsGravity: number): number =>
  1000 * (1 - solidsFraction({ gramsPerMl, solidsGravity }))

describe('dry matter and water', () => {
  // S. Altmann, potters.org subject 11877.
  it('1500 g/L at gravity 2.5 holds 833.3 g dry and 666.7 g water', () => {
    near(dryGramsPerLitre(1.5, 2.5), 833.3, { by: 0.05 })
    near(waterGramsPerLitre(1.5, 2.5), 666.7, { by: 0.05 })
  })
  it.each([
    [1.5, 11.2],
    [1.75, 5.6],
  ])('14 kg dry at %d needs %d kg water (same)', (density, water) =>
    near((14 * waterGramsPerLitre(density, 2.5)) / dryGramsPerLitre(density, 2.5), water, { by: 0.01 }),
  )
  // Sheet quoting the Handbook for Australian Potters (scribd 187727916), gravity 2.6, g dry a litre; halves and quarters cut or rounded.
  it.each([
    [1.05, 81],
    [1.1, 162],
    [1.15, 244],
    [1.2, 325],
    [1.25, 406],
    [1.3, 487],
    [1.35, 569],
    [1.4, 650],
    [1.45, 731],
    [1.5, 812],
    [1.55, 894],
    [1.6, 975],
    [1.65, 1056],
    [1.7, 1137],
  ])('at %d holds %d g dry a litre (handbook table)', (density, dry) =>
    near(dryGramsPerLitre(density, 2.6), dry, { by: 0.51 }),
  )
  // The same sheet's second table: mL that hold 100 g dry.
  it.each([
    [1.05, 1231],
    [1.1, 615],
    [1.15, 410],
    [1.2, 308],
    [1.25, 246],
    [1.3, 205],
    [1.35, 176],
    [1.4, 154],
    [1.45, 137],
    [1.5, 123],
    [1.55, 112],
    [1.6, 103],
    [1.65, 95],
    [1.7, 88],
  ])('at %d, %d mL hold 100 g dry', (density, ml) =>
    expect(Math.round(1e5 / dryGramsPerLitre(density, 2.6))).toBe(ml),
  )
})

describe('to a target', () => {
  // Weighting and diluting drilling mud (Lapeyrouse, Formulas and Calculations for Drilling, from memory):
  // barite of 35 lb/gal: 1470 (W2-W1)/(35-W2) sacks of 100 lb per 100 bbl; water: V (W1-W2)/(W2-8.33) bbl.
  const water = 8.33
  const barrel = 42
  it.each([
    [12, 14],
    [10, 11.5],
    [9, 13],
  ])('mud of %d to %d lb/gal takes the barite of the field formula', (from, to) => {
    const sacks = (1470 * (to - from)) / (35 - to)
    // In gallons and pounds: density relative to water, so dry mix comes out in gallons of water's weight.
    const { dryKg, newLitres } = dryTo(100 * barrel, from / water, to / water, 35 / water)
    near((dryKg * water) / 100, sacks, { part: 1e-9 })
    near(newLitres / barrel, 100 + (100 * (to - from)) / (35 - to), { part: 1e-9 })
  })
  it.each([
    [14, 12],
    [12, 10.5],
  ])('mud of %d to %d lb/gal takes the water of the field formula', (from, to) =>
    near(waterTo(100, from / water, to / water).waterLitres, (100 * (from - to)) / (to - water), {
      part: 1e-9,
    }),
  )
  // Mass balance done by hand.
  it('10 L of 1.60 to 1.45 takes 3.3333 L', () =>
    near(waterTo(10, 1.6, 1.45).waterLitres, 10 / 3, { by: 1e-9 }))
  it('10 L of 1.40 to 1.45 by dry mix of 2.6 takes 1.1304 kg and makes 10.4348 L', () => {
    const { dryKg, newLitres } = dryTo(10, 1.4, 1.45, 2.6)
    near(dryKg, 1.1304, { by: 5e-5 })
    near(newLitres, 10.4348, { by: 5e-5 })
  })
})
