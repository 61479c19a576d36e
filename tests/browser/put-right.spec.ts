import { expect, type Page, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { forecastOf } from '../../src/table/forecast/forecast.ts'
import { lastDip, nextCoat, strayed } from '../../src/table/model/plan.ts'
import type { Table } from '../../src/table/model/state.ts'
import { toldDip } from '../fixtures/told-dip.ts'
import { BenchPage, EVENING } from './bench.ts'

/**
 * Slips and their repairs, a row each: what is hit, how many hits it takes, what follows, and that take back and put
 * back bring exactly the one state and the other. A phone that died is told of in return.spec.ts.
 */
interface Slip {
  readonly slip: string
  /** What is hit after Other. */
  readonly tiles: readonly (string | RegExp)[]
  /** The last of them is held for 700 ms. */
  readonly hold?: true
  readonly follows: (before: Table, after: Table, page: Page) => void | Promise<void>
}

const MOST_HITS = 3

const pot = (table: Table, number: number) => table.pots[`demo.${number}`]!
const dip = (table: Table, number: number) => lastDip(pot(table, number))!
const ready = (table: Table, number: number) => forecastOf(table, pot(table, number))!.ready.likely
const thickest = (table: Table, number: number) =>
  Math.max(...forecastOf(table, pot(table, number))!.pot.zones.map((zone) => zone.likelyMm))

/** Everything but the list of hits, which grows by the hits that undo. */
const standing = ({ hits: _hits, takenBack: _back, ...rest }: Table) => rest

async function holdTile(page: Page, name: string | RegExp): Promise<void> {
  await page.clock.runFor(450)
  const tile = page.locator('.other').getByRole('button', { name })
  await tile.dispatchEvent('pointerdown', { pointerId: 5, button: 0, clientX: 180, clientY: 500 })
  await page.clock.runFor(800)
  await page.locator('.bench').dispatchEvent('pointerup', { pointerId: 5, clientX: 180, clientY: 500 })
  await page.clock.runFor(50)
}

async function play(bench: BenchPage, { slip, tiles, hold, follows }: Slip): Promise<void> {
  await test.step(slip, async () => {
    expect(1 + tiles.length, 'hits').toBeLessThanOrEqual(MOST_HITS)
    const { page } = bench
    const before = await bench.table()
    if (hold) {
      await bench.other(...tiles.slice(0, -1))
      await holdTile(page, tiles.at(-1)!)
    } else await bench.other(...tiles)
    const after = await bench.table()
    expect(standing(after)).not.toEqual(standing(before))
    await follows(before, after, page)
    const close = page.locator('.other-close')
    for (let i = 0; i < 2 && (await close.count()) > 0; i++) {
      await page.clock.runFor(450)
      await close.tap()
      await page.clock.runFor(50)
    }
    for (const [act, expected] of [
      ['take-back', before],
      ['put-back', after],
      ['take-back', before],
    ] as const) {
      await page.clock.runFor(450)
      // The rules for touches go by the browser's own stamps, which no clock here moves.
      await page.waitForTimeout(420)
      await page.locator(`.strip-${act}`).tap()
      await page.clock.runFor(50)
      await expect(async () => {
        expect(standing(await bench.table()), act).toEqual(standing(expected))
      }).toPass({ timeout: 20_000 })
    }
  })
}

const dipped = (number: number, coat: number, bucketId: string, outAt: number): TableEvent =>
  toldDip({
    dipId: `dip.${number}.${coat}`,
    potId: `demo.${number}`,
    coat,
    bucketId,
    leadS: 4,
    lowerS: 0.6,
    outAt,
  })

const IN_HAND: readonly Slip[] = [
  {
    slip: 'tapped late: OUT was two minutes before',
    tiles: ['I lifted earlier', '2 min earlier'],
    follows: (before, after) => {
      expect(dip(after, 33).outAt).toBe(dip(before, 33).outAt - 120_000)
      // The damp of the wipe had two minutes less to leave before it.
      expect(Math.abs(ready(before, 33) - ready(after, 33) - 120_000)).toBeLessThan(15_000)
    },
  },
  {
    slip: 'another pot than told: its coat goes to the one in hand, the told one is back in line',
    tiles: ['It was another pot', /34$/],
    follows: async (_before, after, page) => {
      expect(pot(after, 33).dips).toEqual([])
      expect(dip(after, 34)).toMatchObject({ bucketId: 'demo.gatepost', coat: 0 })
      await expect(page.locator('.bench-main')).toContainText('set it down at A 4')
    },
  },
  {
    slip: 'another bucket: pair and zone are said, another stack and the tap are offered',
    tiles: ['It was another bucket', /Heather$/],
    follows: async (before, after, page) => {
      expect(strayed(after, pot(after, 33))?.bucketId).toBe('demo.heather')
      expect(thickest(after, 33)).not.toBe(thickest(before, 33))
      const sheet = page.locator('.other')
      await expect(sheet).toContainText('33 got Heather')
      await expect(sheet).toContainText(/Brackwater over Heather, (collar|body|skirt|inside): untried/)
      await expect(sheet.getByRole('button', { name: 'Stack Doorstep' })).toBeVisible()
      const wash = sheet.getByRole('button', { name: 'Wash it off' })
      await expect(wash).toBeVisible()
      // On its side the phone shows all of it as well.
      await page.setViewportSize({ width: 640, height: 360 })
      await expect(wash).toBeInViewport({ ratio: 1 })
      await expect(sheet.getByRole('button', { name: 'Stack Doorstep' })).toBeInViewport({ ratio: 1 })
      await page.setViewportSize({ width: 360, height: 640 })
    },
  },
  {
    slip: 'held three seconds too long',
    tiles: ['Change the seconds', /^\+3 s/],
    follows: (before, after) => {
      expect(dip(after, 33)).toMatchObject({ holdS: 7, plannedHoldS: 4, how: 'corrected' })
      expect(dip(after, 33).outAt - dip(before, 33).outAt).toBe(3000)
      expect(thickest(after, 33)).toBeGreaterThan(thickest(before, 33))
    },
  },
  {
    slip: 'cut short by two seconds',
    tiles: ['Change the seconds', /^−2 s/],
    follows: (before, after) => {
      expect(dip(after, 33).holdS).toBe(2)
      expect(thickest(after, 33)).toBeLessThan(thickest(before, 33))
    },
  },
  {
    slip: 'lost count of coats: the next dip is blocked until they are counted',
    tiles: [/^More/, 'not sure'],
    follows: async (_before, after, page) => {
      expect(pot(after, 33).uncounted).toBe(true)
      await expect(page.locator('.bench-main')).toContainText('33: how many coats are on?')
      await expect(page.locator('.bench-main')).toContainText('Scratch an edge, or weigh it.')
      await expect(page.locator('.coat-key')).toHaveText(['0', '1', '2', '3'])
    },
  },
  {
    slip: 'dropped: it leaves the line',
    tiles: [/Remove 33/],
    hold: true,
    follows: async (_before, after, page) => {
      expect(pot(after, 33).gone).toBe(true)
      await expect(page.locator('.bench-main')).not.toContainText('33')
    },
  },
  {
    slip: 'glaze knocked off: dabbed, and kept for judging',
    tiles: [/^More/, /^Chip/],
    follows: (_before, after) => expect(pot(after, 33).touchedUpAt).toBeDefined(),
  },
  {
    slip: 'washed off: bare again, and wet through',
    tiles: [/^More/, 'Wash it off'],
    hold: true,
    follows: (_before, after) => {
      expect(nextCoat(pot(after, 33))).toBe(0)
      expect(forecastOf(after, pot(after, 33))!.thirsty.likely - pot(after, 33).washedAt!).toBeGreaterThan(
        30 * 60_000,
      )
    },
  },
]

test('with the pot still in the hands each slip is put right in three hits, and exactly undone', async ({
  page,
}) => {
  test.setTimeout(120_000)
  const at = EVENING.getTime()
  const bench = await BenchPage.on(page, [
    demoEvents(),
    [{ kind: 'stirred', bucketId: 'demo.gatepost' }],
    [dipped(33, 0, 'demo.gatepost', at + 48_000)],
  ])
  await expect(bench.bar).toContainText('FOOT CLEAN')
  for (const slip of IN_HAND) await play(bench, slip)
})

const BEFORE: readonly Slip[] = [
  {
    slip: 'forgot to tap: it is dipped already, five minutes ago',
    tiles: ['Log a dip', '5 min ago'],
    follows: (_before, after) => {
      expect(dip(after, 34)).toMatchObject({ how: 'logged', holdS: 4, coat: 0 })
      expect(pot(after, 34).waxedAt).toBeDefined()
      const since = after.hits.at(-1)!.at - dip(after, 34).outAt
      expect(since).toBe(300_000)
    },
  },
  {
    slip: 'about to take another pot: the card follows the hand',
    tiles: ['Another pot', /36$/],
    follows: async (_before, _after, page) => {
      await expect(page.locator('.top-row')).toContainText('36')
    },
  },
  {
    slip: 'about to use another bucket: said, and asked twice',
    tiles: ['Another bucket', /Heather$/],
    follows: async (_before, after, page) => {
      expect(after.picked).toMatchObject({ potId: 'demo.34', bucketId: 'demo.heather' })
      await expect(page.locator('.bench .bar')).toContainText(/STIRRED|HOLD TO DIP ANYWAY/)
    },
  },
  {
    slip: 'broken: hold, and it leaves the line',
    tiles: [/^More/, /Remove 34/],
    hold: true,
    follows: async (_before, after, page) => {
      expect(pot(after, 34).gone).toBe(true)
      await expect(page.locator('.top-row')).not.toContainText('34')
    },
  },
]

/** 34 is wiped and next for Gatepost, which is stirred; all others are away but 36. */
const nextIs34 = (): (readonly TableEvent[])[] => [
  demoEvents(),
  [{ kind: 'settings-set', settings: { staleMin: 30 } }],
  [31, 32, 33, 35, 37, 38].map((number) => ({ kind: 'pot-gone' as const, potId: `demo.${number}` })),
  ['demo.34', 'demo.36'].flatMap((potId): TableEvent[] => [
    { kind: 'waxed', potId, implied: true },
    { kind: 'wiped', potId, implied: true },
  ]),
  [
    { kind: 'stirred', bucketId: 'demo.heather' },
    { kind: 'stirred', bucketId: 'demo.gatepost' },
  ],
]

/** The order of work has been reckoned, and its card is no longer fresh: it comes from a worker in its own time. */
async function settled({ page }: BenchPage): Promise<void> {
  await page.waitForTimeout(600)
  await page.clock.runFor(500)
}

test('before a dip each slip is put right in three hits, and exactly undone', async ({ page }) => {
  test.setTimeout(120_000)
  const bench = await BenchPage.on(page, nextIs34())
  await bench.pass(300)
  await settled(bench)
  await bench.pick(34)
  await expect(bench.bar).toContainText('START')
  for (const slip of BEFORE) await play(bench, slip)
})

const BY_OTHERS: readonly Slip[] = [
  {
    slip: 'someone else dipped it, five minutes ago',
    tiles: ['Log a dip', '5 min ago Potter 2'],
    follows: (_before, after) => {
      expect(dip(after, 34)).toMatchObject({ how: 'logged', hands: 1, coat: 0 })
      expect(after.openBucket).toBe('demo.gatepost')
    },
  },
]

const OUT_OF_HAND: readonly Slip[] = [
  {
    slip: 'someone else has it: the count was theirs, and the card goes with them',
    tiles: [/^The other potter dipped it/],
    follows: async (before, after, page) => {
      expect(dip(after, 34)).toEqual({ ...dip(before, 34), hands: 1 })
      await expect(page.locator('.bench-main')).not.toContainText('set it down at A 4')
      expect(after.openBucket).toBe('demo.gatepost')
    },
  },
]

test('with two at the phone, what someone else dipped is told in three hits, and exactly undone', async ({
  page,
}) => {
  const two: readonly TableEvent[] = [{ kind: 'settings-set', settings: { potters: 2 } }]
  const bench = await BenchPage.on(page, [...nextIs34(), two])
  await bench.pass(300)
  await settled(bench)
  await bench.pick(34)
  for (const slip of BY_OTHERS) await play(bench, slip)
  await bench.hit()
  await page.clock.runFor(25_000)
  for (const slip of OUT_OF_HAND) await play(bench, slip)
})

test('washed off: the wall is full, and when it drinks again is computed', async ({ page }) => {
  const others = [31, 32, 33, 35, 36, 37, 38].map((number) => ({
    kind: 'pot-gone' as const,
    potId: `demo.${number}`,
  }))
  const bench = await BenchPage.on(page, [
    demoEvents(),
    others,
    [dipped(34, 0, 'demo.gatepost', EVENING.getTime() - 60_000)],
  ])
  await bench.other(/^More/)
  const wash = page.locator('.other').getByRole('button', { name: 'Wash it off' })
  // A tap in passing erases nothing.
  await page.clock.runFor(450)
  await wash.tap()
  await page.clock.runFor(50)
  await expect(wash).toBeVisible()
  await holdTile(page, 'Wash it off')
  await expect(bench.face).toContainText('34 washed: wall full')
  await expect(bench.face).toContainText(/Drinks again about 2\d:\d\d\./)
})

test('the wrong bucket is named against the card, and a plain hit does not dip', async ({ page }) => {
  const bench = await BenchPage.on(page, nextIs34())
  await bench.pass(300)
  await settled(bench)
  await bench.pick(34)
  await bench.other('Another bucket', /Heather$/)
  await bench.hit()
  await expect(bench.face).toContainText('You chose Heather. The plan says Gatepost.')
  await bench.hit()
  expect((await bench.pot(34)).dips).toEqual([])
  await bench.holdBar()
  await page.clock.runFor(100)
  expect((await bench.pot(34)).dips).toMatchObject([
    { bucketId: 'demo.heather', plannedBucketId: 'demo.gatepost' },
  ])
})

test('a coat that is on already is said, and wants a second, deliberate choice; then both count', async ({
  page,
}) => {
  const at = EVENING.getTime()
  const bench = await BenchPage.on(page, [
    ...nextIs34(),
    [
      { ...dipped(34, 0, 'demo.gatepost', at - 3_000_000) } as TableEvent,
      { kind: 'sponged', potId: 'demo.34', implied: true },
      { kind: 'touched', potIds: ['demo.34'], dry: true },
      { kind: 'stirred', bucketId: 'demo.gatepost' },
    ],
  ])
  await settled(bench)
  const once = thickest(await bench.table(), 34)
  await bench.pick(34)
  await bench.other('Another bucket', /Gatepost$/)
  await expect(bench.face).toContainText('34 already has Gatepost. Really again?')
  await bench.hit()
  expect((await bench.pot(34)).dips).toHaveLength(1)
  await bench.holdBar()
  await page.clock.runFor(12_000)
  const table = await bench.table()
  expect(pot(table, 34).dips).toHaveLength(2)
  expect(thickest(table, 34)).toBeGreaterThan(once * 1.2)
})

test('three long dips on a thick thirsty wall: zone, mm, limit and one remedy, which one tap takes', async ({
  page,
}) => {
  const at = EVENING.getTime()
  const facts = demoEvents().find((event) => event.kind === 'pot-set' && event.pot.number === 33)
  if (facts?.kind !== 'pot-set') throw new Error('no pot 33')
  const { shape } = facts.pot
  const touched = [
    { kind: 'sponged', potId: 'demo.33', implied: true },
    { kind: 'touched', potIds: ['demo.33'], dry: true },
  ] as const
  const bench = await BenchPage.on(page, [
    ...nextIs34(),
    [
      {
        kind: 'pot-set',
        pot: {
          ...facts.pot,
          potId: 'thick',
          number: 40,
          place: { board: 'C', spot: 1 },
          shape: { ...shape, wallMm: 8, footLineMm: 30 },
        },
      },
      {
        kind: 'plan-changed',
        potId: 'thick',
        coats: [
          { bucketId: 'demo.gatepost', cover: { kind: 'full' }, holdS: 8 },
          { bucketId: 'demo.brackwater', cover: { kind: 'toSkirt' }, holdS: 8 },
          { bucketId: 'demo.heather', cover: { kind: 'collar', depthMm: 25 }, holdS: 5 },
        ],
      },
      { ...dipped(33, 0, 'demo.gatepost', at - 7_200_000), potId: 'thick', holdS: 8 } as TableEvent,
      { ...touched[0], potId: 'thick' },
      { ...touched[1], potIds: ['thick'] },
      {
        ...dipped(33, 1, 'demo.brackwater', at - 3_600_000),
        potId: 'thick',
        holdS: 8,
        cover: { kind: 'toSkirt' },
        gramsPerMl: 1.43,
      } as TableEvent,
      { ...touched[0], potId: 'thick' },
      { ...touched[1], potIds: ['thick'] },
      { kind: 'stirred', bucketId: 'demo.heather' },
      { kind: 'decanted', bucketId: 'demo.heather', litres: 0.66 },
    ],
  ])
  await settled(bench)
  await bench.other('Another pot', /40$/)
  await expect(bench.bar).toContainText('START')
  await expect(bench.face).toContainText(/collar (may reach )?\d\.\d mm, limit \d\.\d mm/)
  await bench.other(/^(Dip [\d.]+ s instead of 5|Leave this coat out)$/)
  const coats = (await bench.table()).pots.thick!.ownPlan!
  expect(coats[2]?.holdS ?? 0).toBeLessThan(5)
})

test('collar: the pour and its level are said, and the return stays open until it is ticked', async ({
  page,
}) => {
  const bench = await BenchPage.on(page, [
    ...nextIs34(),
    [
      {
        kind: 'pot-set',
        pot: {
          potId: 'tube',
          number: 41,
          place: { board: 'C', spot: 1 },
          shape: { form: 'cylinder', heightMm: 120, rimMm: 150, footMm: 150, wallMm: 5, footLineMm: 8 },
          stackId: 'demo.tideline',
        },
      },
      { kind: 'waxed', potId: 'tube', implied: true },
      { kind: 'wiped', potId: 'tube', implied: true },
      {
        kind: 'plan-changed',
        potId: 'tube',
        coats: [{ bucketId: 'demo.heather', cover: { kind: 'collar', depthMm: 25 }, holdS: 3 }],
      },
    ],
  ])
  await bench.pass(300)
  await settled(bench)
  await bench.pick(41)
  // Straight-sided: (35 mm of a 200 mm vessel less 25 mm of a 150 mm pot): 0.66 L, 21 mm deep.
  await expect(bench.face).toContainText(/Pour 6[5-7]0 ml into the collar vessel, 21 mm deep/)
  await bench.hit()
  await expect.poll(async () => (await bench.table()).collar?.litres).toBeCloseTo(0.66, 1)
  await expect(bench.bar).toContainText('START')
  await bench.hit()
  await page.clock.runFor(22_000)
  await bench.hit()
  await bench.pick(34)
  await expect(bench.face).toContainText('Pour it back into Heather')
  await expect(bench.bar).toContainText('RETURNED')
  await bench.hit()
  expect((await bench.table()).collar).toBeUndefined()
})
