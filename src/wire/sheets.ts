import { strToU8, zip } from 'fflate'
import { DateTime } from 'luxon'
import Papa from 'papaparse'
import type { ShareResult } from '../device/ports.ts'
import { openShare } from '../device/share.ts'
import { fileDay } from '../screens/calendar.ts'
import type { Table } from '../table/model/state.ts'
import { type Cell, type Sheet, type Sheets, sheetsOf } from '../table/sheets/sheets.ts'
import { SHEET_WORDS, type SheetWords } from '../words/sheets.ts'

/** By it spreadsheets know UTF-8 (Unicode Standard 23.8). */
const BOM = '\ufeff'
const ZIP_TYPE = 'application/zip'

/** The records as sheets in one file, through the share sheet or the downloads. `nowMs`: epoch ms. */
export async function passSheets(table: Table, nowMs: number): Promise<ShareResult> {
  const words = SHEET_WORDS[table.settings.language]
  const sheets = sheetsOf(table)
  const names = Object.keys(words.file) as (keyof Sheets)[]
  const files = Object.fromEntries(
    names.map((name) => [`${words.file[name]}.csv`, strToU8(csvOf(sheets[name], words))]),
  )
  const bytes = await new Promise<Uint8Array<ArrayBuffer>>((resolve, reject) =>
    zip(files, (error, data) => (error ? reject(error) : resolve(new Uint8Array(data)))),
  )
  return openShare().file(`bucketside-${fileDay(nowMs)}.zip`, ZIP_TYPE, bytes)
}

/**
 * A sheet as comma-separated values (RFC 4180, CRLF). A moment stands twice, in local time and in UTC; a text that a
 * spreadsheet would take for a formula begins with an apostrophe (OWASP, CSV Injection).
 */
export function csvOf<Column extends string>(sheet: Sheet<Column>, words: SheetWords): string {
  const headings: Readonly<Record<string, string>> = words.heading
  const moments = new Set<Column>(sheet.moments)
  const fields = sheet.columns.flatMap((column) => {
    const heading = headings[column] ?? column
    return moments.has(column) ? [words.local(heading), words.utc(heading)] : [heading]
  })
  const data = sheet.lines.map((line) =>
    sheet.columns.flatMap((column) => {
      const cell = line[column] as Cell
      if (moments.has(column)) return isMoment(cell) ? [localOf(cell.atMs), utcOf(cell.atMs)] : ['', '']
      return [textOf(cell, words)]
    }),
  )
  return BOM + Papa.unparse({ fields, data }, { escapeFormulae: true, newline: '\r\n' })
}

const isMoment = (cell: Cell): cell is { readonly atMs: number } => typeof cell === 'object' && 'atMs' in cell

const localOf = (atMs: number): string => DateTime.fromMillis(atMs).toFormat('yyyy-MM-dd HH:mm:ss')
const utcOf = (atMs: number): string =>
  DateTime.fromMillis(atMs, { zone: 'utc' }).toFormat("yyyy-MM-dd'T'HH:mm:ss'Z'")

/** Numbers stay numbers: a minus before one is no formula. */
function textOf(cell: Cell, words: SheetWords): string | number {
  if (cell === undefined) return ''
  if (typeof cell === 'boolean') return cell ? words.yes : words.no
  if (typeof cell === 'object') return 'cover' in cell ? words.cover[cell.cover] : ''
  return typeof cell === 'number' && !Number.isFinite(cell) ? '' : cell
}
