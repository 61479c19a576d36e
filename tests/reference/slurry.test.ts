import { describe, expect, it } from 'vitest'
import { GRAVITY, gravityOfMix } from '../../src/engine/slop/materials.ts'
import {
  baume,
  densityOfBatch,
  densityOfCup,
  dryGramsPerLitre,
  dryTo,
  fillOf,
  gramsPerMlOfBaume,
  gramsPerMlOfPint,
  gramsPerMlOfTwaddell,
  gravityOfDried,
  massFraction,
  twaddell,
  volumeFraction,
  waterGramsPerLitre,
  waterTo,
} from '../../src/engine/slop/slurry.ts'
import { near } from './near.ts'

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
    [1.15, 244],
    [1.25, 406],
    [1.35, 569],
    [1.4, 650],
    [1.45, 731],
    [1.55, 894],
    [1.7, 1137],
  ])('at %d holds %d g dry a litre (handbook table)', (density, dry) =>
    near(dryGramsPerLitre(density, 2.6), dry, { by: 0.51 }),
  )
  // The same sheet's second table: mL that hold 100 g dry.
  it.each([
    [1.1, 615],
    [1.2, 308],
    [1.3, 205],
    [1.4, 154],
    [1.5, 123],
    [1.6, 103],
    [1.65, 95],
    [1.7, 88],
  ])('at %d, %d mL hold 100 g dry', (density, ml) =>
    expect(Math.round(1e5 / dryGramsPerLitre(density, 2.6))).toBe(ml),
  )
  // Wills' Mineral Processing Technology, ch. 3, examples on pulp density (from memory).
  it('quartz pulp of 1400 kg/m3 is 45.9 % solids by mass', () =>
    near(massFraction(1.4, 2.65), 0.459, { by: 5e-4 }))
  it('720 kg/h of it carry 330.5 kg/h of quartz', () =>
    near(720 * massFraction(1.4, 2.65), 330.5, { by: 0.5 }))
  it.each([
    [0.4, 1.364],
    [0.55, 1.579],
  ])('pulp of %d solids by mass at gravity 3 weighs %d kg/L', (part, density) =>
    near(densityOfBatch(part, 1 - part, 3), density, { by: 5e-4 }),
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
  it('13.25 L of 1.52 to 1.45: 2.06 L in all, 1.37 L first', () => {
    const { waterLitres, firstLitres } = waterTo(13.25, 1.52, 1.45)
    near(waterLitres, 2.061, { by: 1e-3 })
    near(firstLitres, 1.374, { by: 1e-3 })
  })
  it('10 L of 1.40 to 1.45 by dry mix of 2.6 takes 1.1304 kg and makes 10.4348 L', () => {
    const { dryKg, newLitres } = dryTo(10, 1.4, 1.45, 2.6)
    near(dryKg, 1.1304, { by: 5e-5 })
    near(newLitres, 10.4348, { by: 5e-5 })
  })
  it('20 L at 1.45, gravity 2.6, is 14.625 kg dry and 14.375 kg water', () => {
    const { dryKg, waterKg } = fillOf(20, 1.45, 2.6, [])
    near(dryKg, 14.625, { by: 1e-9 })
    near(waterKg, 14.375, { by: 1e-9 })
  })
})

describe('solids gravity', () => {
  // Densities: CRC Physical Constants of Inorganic Compounds as in the open `chemicals` library; by hand from these.
  const clear = [
    { name: 'potash feldspar', parts: 40, gramsPerMl: 2.57 },
    { name: 'quartz', parts: 25, gramsPerMl: 2.65 },
    { name: 'whiting', parts: 20, gramsPerMl: 2.71 },
    { name: 'kaolin', parts: 15, gramsPerMl: 2.6 },
  ]
  it('of a plain stoneware mix is 2.62141', () => near(gravityOfMix(clear), 2.62141, { by: 1e-5 }))
  it.each([
    ['tinOxide', 2.77726],
    ['zircon', 2.72808],
    ['ironOxide', 2.74641],
  ] as const)('with ten parts of %s is %d', (name, gravity) =>
    near(gravityOfMix([...clear, { name, parts: 10, gramsPerMl: GRAVITY[name] }]), gravity, { by: 1e-5 }),
  )
  // Mineral densities of a petrochemical handbook table (scholars.direct jpe-4-012, table 2).
  it.each([
    ['quartz', 2.65],
    ['potashFeldspar', 2.55],
    ['sodaFeldspar', 2.63],
    ['whiting', 2.71],
    ['dolomite', 2.87],
    ['ironOxide', 5.18],
  ] as const)('of %s is near the mineral table: %d', (name, gravity) =>
    near(GRAVITY[name], gravity, { part: 0.02 }),
  )
  it('from 100 mL of 1.5 dried to 83.33 g is 2.5 (Altmann, as above)', () =>
    near(gravityOfDried(100, 1.5, 83.333), 2.5, { by: 1e-3 }))
  it('from a litre of 1.45 dried to 731.25 g is 2.6 (handbook table, exact)', () =>
    near(gravityOfDried(1000, 1.45, 731.25), 2.6, { by: 1e-9 }))
  it('a cup of 100 mL at 145 g, to a gram and a millilitre, is 1.45 and good to 0.018', () => {
    const { gramsPerMl, errorGramsPerMl } = densityOfCup(52, 197, 100, 1, 1)
    near(gramsPerMl, 1.45, { by: 1e-12 })
    near(errorGramsPerMl, Math.hypot(0.01, 0.0145), { by: 1e-12 })
  })
})

// Conversions, kept for the scales' sake and not counted among the checks.
describe('hydrometer scales', () => {
  it.each([
    [7, 1.035],
    [25, 1.125],
    [100, 1.5],
  ])('%d degTw is %d (Beringer, assaying text)', (degrees, density) =>
    near(gramsPerMlOfTwaddell(degrees), density, { by: 1e-9 }),
  )
  it('sulphuric acid of 1.8 is 160 degTw', () => near(twaddell(1.8), 160, { by: 1e-9 }))
  it.each([
    [10, 1.0746],
    [20, 1.1613],
    [30, 1.2631],
    [45, 1.4545],
  ])('%d degBe is %d (printed old Dutch table)', (degrees, density) =>
    near(gramsPerMlOfBaume(degrees, 'oldDutch'), density, { by: 1.5e-4 }),
  )
  it('1.45 is 45 degBe on the American scale', () => near(baume(1.45, 'american'), 45, { by: 1e-9 }))
  it('29 oz an imperial pint and 24.20 oz an American one are 1.45', () => {
    near(gramsPerMlOfPint(29, 'imperial'), 1.45, { by: 1e-9 })
    near(gramsPerMlOfPint(24.2, 'american'), 1.45, { by: 1e-3 })
  })
  it('half as dense solids fill twice the part: a fraction of 0.28125 at 1.45', () =>
    near(volumeFraction(1.45, 2.6), 0.28125, { by: 1e-12 }))
})
