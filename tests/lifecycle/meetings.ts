/** A phone that is killed while it takes in another's records: read by codes off its screen, or of a file. */
import type { Page } from 'puppeteer-core'
import type { Stamped } from '../../shared/events.ts'
import { codeOf } from '../../src/pass/code.ts'
import { showing } from '../../src/pass/showing.ts'
import { writeBackup } from '../../src/store/backup.ts'
import { phoneOf } from '../../src/table/fold/seen.ts'
import { armed, recordsOf } from '../fixtures/season.ts'
import { joinFile, openOn, openScreen, seasonOf } from './app.ts'
import { pause } from './place.ts'
import type { Sitting } from './sitting.ts'
import { storedRecords } from './stored.ts'

const BROUGHT = 600
const NOTED_MS = 5000
type Row = Stamped & { readonly id: string; readonly order: number }

/** In place of a camera: what `show` is given, one code after the other. Comes before the page is opened. */
const withCamera = (page: Page) =>
  page.evaluateOnNewDocument(() => {
    const canvas = Object.assign(document.createElement('canvas'), { width: 1280, height: 720 })
    const context = canvas.getContext('2d')
    let codes: readonly (readonly string[])[] = []
    let next = 0
    setInterval(() => {
      const rows = codes[next++ % codes.length]
      if (!context || !rows) return
      context.fillStyle = '#fff'
      context.fillRect(0, 0, 1280, 720)
      context.fillStyle = '#000'
      for (const [y, row] of rows.entries())
        for (const [x, dark] of [...row].entries())
          if (dark === '1') context.fillRect(332 + 8 * x, 52 + 8 * y, 8, 8)
    }, 40)
    Object.assign(window, {
      show(rows: typeof codes) {
        codes = rows
      },
    })
    navigator.mediaDevices.getUserMedia = async () => canvas.captureStream(25)
  })

/** What a phone shows that has these records, more than once round. */
function codesOf(phone: string, records: readonly Row[]): string[][] {
  const nowMs = Date.now()
  const shown = showing({ phone, records: records as never, size: 'fine', nowMs })
  return Array.from({ length: 2 * shown.codes }, (_, i) =>
    codeOf(shown.code(i, nowMs), 'fine').map((row) => row.map((dark) => (dark ? '1' : '0')).join('')),
  )
}

async function readCodes(page: Page, address: string, codes: string[][]): Promise<void> {
  await openScreen(page, address, 'codes')
  const read = await page.waitForSelector('::-p-xpath(//button[normalize-space()="READ"])')
  await page.evaluate((rows) => (window as unknown as { show(rows: string[][]): void }).show(rows), codes)
  await pause(700)
  await read?.tap()
  await page.waitForSelector('.codes-took', { timeout: 60_000 })
}

/** Meetings with phone after phone, by codes and by files in turn. */
export function meetingsOnApp(root: string): Sitting {
  const phones = new Map<string, readonly Row[]>()
  const watched = new WeakSet<Page>()
  let address = ''
  return {
    root,
    longestMs: 6000,
    pauseMs: [0, 200],
    async open(page, at) {
      if (!watched.has(page)) await withCamera(page)
      watched.add(page)
      if (address === '') await openOn(page, at, recordsOf(armed(Date.now() - 60_000)))
      address = at
      await openScreen(page, at, 'room')
    },
    async hit(page, random) {
      const phone = `m${String(phones.size).padStart(7, '0')}`
      const records = seasonOf(phone, BROUGHT) as Row[]
      phones.set(phone, records)
      if (random() < 0.6) await readCodes(page, address, codesOf(phone, records))
      else {
        await openScreen(page, address, 'room/keep')
        await joinFile(page, writeBackup(records as never, { at: Date.now(), tz: 0 }))
      }
    },
    /** All that is stored, once it is as it says: whom it met is here with all that was read, and who is here was met. */
    async known(page) {
      for (const sinceMs = Date.now(); ; await pause(200)) {
        const stored = (await storedRecords(page)) as Row[]
        const ids = new Set(stored.map(({ id }) => id))
        const met = stored.flatMap(({ event }) => (event.kind === 'met' ? [event] : []))
        for (const { phone, upTo } of met) {
          const lost = phones.get(phone)?.filter(({ id, order }) => order <= upTo && !ids.has(id)) ?? []
          if (lost.length > 0) throw new Error(`${phone} is met up to ${upTo}, and ${lost.length} lack`)
        }
        const unmet = new Set(stored.map(phoneOf).filter((phone) => phones.has(phone)))
        for (const { phone } of met) unmet.delete(phone)
        if (unmet.size === 0) return [...ids]
        if (Date.now() - sinceMs > NOTED_MS) throw new Error(`${[...unmet]} came, and no meeting is noted`)
      }
    },
  }
}
