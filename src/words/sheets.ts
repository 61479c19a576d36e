import type { Language } from './bench.ts'
import { sheets } from './en/sheets.ts'

/** By language: what the sheets for a spreadsheet are headed with, fetched when they are made. */
export const SHEET_WORDS = { en: sheets } satisfies Record<Language, typeof sheets>

export type SheetWords = typeof sheets
