export interface Imported {
  readonly line: number
  readonly target: string
  readonly typeOnly: boolean
}
export function importsOf(text: string): Imported[]
export function breachOf(path: string, entry: Omit<Imported, 'line'>): string | null
export function breachesOf(sources: readonly { readonly path: string; readonly text: string }[]): string[]
