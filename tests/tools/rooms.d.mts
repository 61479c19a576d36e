export interface Imported {
  readonly line: number
  readonly target: string
  readonly typeOnly: boolean
  readonly late?: true
}
export function importsOf(text: string): Imported[]
export function breachOf(path: string, entry: Omit<Imported, 'line'>): string | null
export interface Source {
  readonly path: string
  readonly text: string
}
export function breachesOf(sources: readonly Source[]): string[]
export function reachesOf(source: Source): string[]
export function circlesOf(sources: readonly Source[]): string[][]
export function mapOf(sources: readonly Source[]): string[]
