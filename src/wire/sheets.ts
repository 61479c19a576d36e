import { strToU8, Zip, ZipDeflate, ZipPassThrough } from 'fflate'
import { DateTime } from 'luxon'
import Papa from 'papaparse'
import type { TableName } from '../../shared/database.ts'
import { openShare } from '../device/share.ts'
import type { PassedOn } from '../screens/app.ts'
import { photoStore, SilentStorageError } from '../store/photos.ts'
import type { Table } from '../table/model/state.ts'
import { type Cell, type Sheet, type Sheets, sheetsOf } from '../table/sheets/sheets.ts'
import { SHEET_WORDS, type SheetWords } from '../words/sheets.ts'
import { fileDay } from './file-day.ts'

/** By it spreadsheets know UTF-8 (Unicode Standard 23.8). */
const BOM = '\ufeff'
const ZIP_TYPE = 'application/zip'

/**
 * The records as sheets and the pictures as files, all in one, through the share sheet or the downloads. `tableName`: whose
 * pictures; `nowMs`: epoch ms.
 */
export async function passSheets(table: Table, tableName: TableName, nowMs: number): Promise<PassedOn> {
  const words = SHEET_WORDS[table.settings.language]
  const { sheets, photos } = sheetsOf(table)
  const zip = openZip()
  for (const name of Object.keys(words.file) as (keyof Sheets)[])
    zip.add(new ZipDeflate(`${words.file[name]}.csv`), strToU8(csvOf(sheets[name], words)))
  const store = photoStore(tableName)
  let [left, silent] = [0, false]
  for (const { photoId, file } of photos) {
    const picture = silent
      ? undefined
      : await store.get(photoId).catch((error) => {
          // One that cannot be read costs no other; a silent storage is asked once.
          silent = error instanceof SilentStorageError
        })
    if (!picture) left++
    // A picture is packed already.
    else
      zip.add(new ZipPassThrough(`${words.file.photos}/${file}`), new Uint8Array(await picture.arrayBuffer()))
  }
  const how = await openShare().file(`bucketside-${fileDay(nowMs)}.zip`, ZIP_TYPE, zip.end())
  return { how, left }
}

/** A zip whose parts are handed over as they are made: no more than one picture is ever held twice. */
function openZip() {
  const parts: Blob[] = []
  let failed: Error | null = null
  const zip = new Zip((error, data) => {
    if (error) failed = error
    else parts.push(new Blob([new Uint8Array(data)]))
  })
  return {
    add(file: ZipDeflate | ZipPassThrough, bytes: Uint8Array) {
      zip.add(file)
      file.push(bytes, true)
    },
    end(): Blob {
      zip.end()
      if (failed) throw failed
      return new Blob(parts, { type: ZIP_TYPE })
    },
  }
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
