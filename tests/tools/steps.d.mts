export interface Counts {
  passed: number
  failed: number
  skipped: number
}
export function vitestCounts(text: string): Counts
export function playwrightCounts(text: string): Counts
export function vitestFailures(text: string): string[]
export function playwrightFailures(text: string): string[]
export function closingLine(counts: Counts): string
