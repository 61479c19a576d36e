import type { Server } from 'node:http'

export interface ServeOptions {
  readonly root: string
  readonly port?: number
  readonly host?: string
  readonly base?: string
  readonly tls?: { readonly key: string; readonly cert: string } | null
  readonly extra?: Readonly<Record<string, { readonly type: string; readonly content: string | Buffer }>>
}
export function typeOf(path: string): string
export function serve(options: ServeOptions): Promise<{ server: Server; port: number }>
