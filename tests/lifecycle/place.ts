import type { Server } from 'node:http'
import { serve } from '../tools/static.mjs'
import { openPocket } from './phone.ts'

/** Where a phone finds an app, and what it keeps of it. */
export interface Place {
  readonly address: string
  /** The phone's storage. */
  readonly folder: string
  /** No network from now on. */
  stopServing(): Promise<void>
  close(): Promise<void>
}

/** Serves a folder, with a phone's storage beside it. */
export async function openPlace(root: string): Promise<Place> {
  const { server, port } = await serve({ root })
  const pocket = await openPocket()
  const stopServing = () => stop(server)
  return {
    address: `http://localhost:${port}/`,
    folder: pocket.folder,
    stopServing,
    async close() {
      await stopServing()
      await pocket.empty()
    },
  }
}

const stop = (server: Server) =>
  new Promise<void>((resolve) => {
    server.close(() => resolve())
    server.closeAllConnections()
  })

export const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms))
