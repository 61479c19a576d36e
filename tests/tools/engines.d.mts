export interface WebKit {
  readonly browser: string
  readonly driver: string
  readonly screen: string
}
export function ensureFirefox(): string | null
export function ensureWebKit(): WebKit | null
