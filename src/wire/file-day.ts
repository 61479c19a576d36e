let days: Intl.DateTimeFormat | undefined

/** The day of a moment, epoch ms, by the wall where the phone is, as files are named by it: 2026-03-29 (ISO 8601). */
export function fileDay(atMs: number): string {
  // Swedish writes its days so (CLDR).
  days ??= new Intl.DateTimeFormat('sv', { dateStyle: 'short' })
  return days.format(atMs)
}
