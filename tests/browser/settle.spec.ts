/** What two phones have in two ways is asked on the screen, one at a time, until nothing is left. */
import { expect, test } from '@playwright/test'
import { hall, laidOn, PhoneAtTable } from '../fixtures/phones.ts'
import { opened, plantRecords } from './bench.ts'
import { key, misfits, open } from './desk-page.ts'

test('a coat twice, a change on both, and twins are settled one by one, and stay settled', async ({
  page,
}) => {
  const at = hall()
  at.nowMs = Date.now() - 3_600_000
  const a = laidOn(new PhoneAtTable('a', at))
  const b = new PhoneAtTable('b', at).read(a)
  for (const on of [a, b]) {
    on.act({ do: 'waxed', potId: 'a-0' }).act({ do: 'wiped', potId: 'a-0' })
    on.act({ do: 'stirred', bucketId: 'a-bucket' })
    on.act({ do: 'start', potId: 'a-0', again: false, unstirred: false })
    at.nowMs += 60_000
  }
  const facts = a.table.pots['a-1']?.facts
  if (!facts) throw new Error('no pot')
  a.act({ do: 'set-pot', pot: { ...facts, number: 40 } })
  b.act({ do: 'set-pot', pot: { ...facts, shape: { ...facts.shape, wallMm: 7 } } })
  // A third was set up apart.
  a.read(b, laidOn(new PhoneAtTable('c', at)))

  await open(page, 'room')
  await plantRecords(page, a.records, 'a')
  await page.reload()
  await opened(page)
  await open(page, 'board')
  await key(page, /things to settle/).tap()
  const title = page.locator('.settle-title')
  await expect(title).toHaveText('Pot 31 has Gatepost twice')
  expect(await page.evaluate(misfits)).toEqual([])
  await key(page, 'Both went on').tap()
  await expect(title).toHaveText(/was changed twice/)
  await expect(page.locator('.settle-way')).toContainText(['number 40', 'wall 7 mm'])
  await page.locator('.settle-way', { hasText: 'number 40' }).getByRole('button').tap()
  for (const asked of [/^Two pots 31/, /^Two pots at A 1/, /^Two pots at A 2/, /^Two buckets G/]) {
    await expect(title).toHaveText(asked)
    // The other phone's gives way.
    await page.locator('.settle-way').last().getByRole('button').tap()
  }
  await expect(page.getByText('Nothing left to settle.')).toBeVisible()
  await page.waitForTimeout(300)
  await page.reload()
  await opened(page)
  await open(page, 'board')
  await expect(page.locator('.tile')).toHaveCount(4)
  await expect(key(page, /to settle/)).toBeHidden()
  await expect(key(page, /^Pot 40 at A 2/)).toBeVisible()
})

test('of three phones: a setting changed apart, a bucket one took away, and what only has to be read', async ({
  page,
}) => {
  const at = hall()
  at.nowMs = Date.now() - 3_600_000
  const a = laidOn(new PhoneAtTable('abcd1234', at))
  const facts = Object.values(a.table.buckets)[0]?.facts
  if (!facts) throw new Error('no bucket')
  a.act({ do: 'set-bucket', bucket: { ...facts, bucketId: 'weir', name: 'Weir', letter: 'W' } })
  const b = new PhoneAtTable('k7fw2222', at).read(a)
  const c = new PhoneAtTable('m3qq4444', at).read(a)
  a.act({ do: 'set-settings', settings: { wax: 'water' } }).act({ do: 'remove-bucket', bucketId: 'weir' })
  b.act({ do: 'set-settings', settings: { wax: 'hot', staleMin: 8 } })
  c.act({ do: 'stirred', bucketId: 'weir' })
  c.act({ do: 'plan-firing', firing: { cone: '9', make: 'american', riseCPerH: 60, holdMin: 10 } })
  const kiln = {
    kilnId: 'k',
    chamber: { kind: 'round', diameterMm: 450, heightMm: 560 },
    shelves: [{ id: 's', kind: 'round', widthMm: 390, depthMm: 390, thickMm: 16, count: 4 }],
    posts: [{ lengthMm: 125, count: 6 }],
    spyHoles: [],
  } as const
  const pair = { overId: 'weir', underId: facts.bucketId, proved: 2, wrong: 0 }
  a.write([{ kind: 'kiln-set', kiln: { ...kiln, posts: [{ lengthMm: 125, count: 9 }] } }])
  b.write([{ kind: 'kiln-set', kiln }])
  a.write([{ kind: 'pair-set', pair }])
  c.write([{ kind: 'pair-set', pair: { ...pair, wrong: 1 } }])
  a.read(b, c)

  await open(page, 'room')
  await plantRecords(page, a.records, 'abcd1234')
  await page.reload()
  await opened(page)
  await open(page, 'board')
  await key(page, '5 things to settle').tap()
  const title = page.locator('.settle-title')
  const way = (text: string) => page.locator('.settle-way', { hasText: text })
  await expect(title).toHaveText('Bucket Weir: keep it?')
  await expect(way('phone M3Q')).toContainText('used or changed it')
  expect(await page.evaluate(misfits)).toEqual([])
  await key(page, 'Keep it').tap()
  await expect(title).toHaveText('Wax: changed twice')
  await expect(way('this phone')).toContainText('water-based')
  await expect(page.locator('.caution')).toContainText('Hot wax')
  expect(await page.evaluate(misfits)).toEqual([])
  await way('phone K7F').getByRole('button').tap()
  await expect(title).toHaveText('The kiln was changed twice')
  await expect(way('this phone')).toContainText('Posts of 125 mm: 9')
  expect(await page.evaluate(misfits)).toEqual([])
  await way('this phone').getByRole('button').tap()
  await expect(title).toHaveText('Weir over Gatepost: changed twice')
  await expect(way('phone M3Q')).toContainText('Went wrong: 1')
  await way('phone M3Q').getByRole('button').tap()
  await expect(title).toHaveText('Changed on another phone')
  await expect(page.locator('.settle-way')).toContainText([
    /A stir keeps.*8 min.*here it was: 5 min/,
    /Cone 9.*Hold at the top: 10 min/,
  ])
  expect(await page.evaluate(misfits)).toEqual([])
  // Kept until it is read, over a reload.
  await page.waitForTimeout(300)
  await page.reload()
  await opened(page)
  await key(page, 'Read').tap()
  await expect(page.getByText('Nothing left to settle.')).toBeVisible()
  await page.reload()
  await opened(page)
  await expect(page.getByText('Nothing left to settle.')).toBeVisible()
  await open(page, 'buckets')
  await expect(page.getByText('Weir').first()).toBeVisible()
})
