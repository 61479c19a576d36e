import { sheets } from './en/sheets.ts'
import { byLanguage } from './languages.ts'

/** By language: what the sheets for a spreadsheet are headed with, fetched when they are made. */
export const SHEET_WORDS = byLanguage<typeof sheets>(sheets, (all) => all.sheets)

export type SheetWords = typeof sheets
