import type { Page } from 'puppeteer-core'
import { switchOn } from './phone.ts'
import { openPlace, pause } from './place.ts'
import type { Sitting } from './sitting.ts'
import { listenForSaved, storedIds } from './stored.ts'

export interface Loss {
  readonly kill: number
  readonly id: string
  readonly missingFrom: 'database' | 'app'
}

export interface Killed {
  /** Hits told to be saved before a kill. */
  readonly acknowledged: number
  /** Hits made, saved or not. */
  readonly hits: number
  readonly losses: readonly Loss[]
}

/** A sequence of numbers from 0 to 1 that follows from the seed (mulberry32, Tommy Ettinger, public domain). */
export function randomFrom(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}

/**
 * Kills the browser `times` times at random moments of one long sitting, always on the same phone, and looks
 * after each start whether everything that had been told to be saved is there.
 */
export async function killOften(sitting: Sitting, times: number, seed: number): Promise<Killed> {
  const random = randomFrom(seed)
  const { address, folder, close } = await openPlace(sitting.root)
  const [least, most] = sitting.pauseMs
  const acknowledged = new Set<string>()
  const losses: Loss[] = []
  let hits = 0
  const look = async (page: Page, kill: number) => {
    const stored = new Set(await storedIds(page))
    const known = sitting.known ? new Set(await sitting.known(page)) : stored
    for (const id of acknowledged) {
      if (losses.some((loss) => loss.id === id)) continue
      if (!stored.has(id)) losses.push({ kill, id, missingFrom: 'database' })
      else if (!known.has(id)) losses.push({ kill, id, missingFrom: 'app' })
    }
  }
  try {
    for (let kill = 1; kill <= times; kill++) {
      const phone = await switchOn(folder)
      try {
        const saved = (ids: readonly string[]) => {
          for (const id of ids) acknowledged.add(id)
        }
        await listenForSaved(phone.page, saved)
        await sitting.open(phone.page, address)
        await look(phone.page, kill - 1)
        let alive = true
        const working = (async () => {
          while (alive) {
            await sitting.hit(phone.page, random, saved)
            hits++
            await pause(least + random() * (most - least))
          }
        })().catch((error) => {
          if (alive) throw error
        })
        // Something was told as saved before the first one, however slow the machine is.
        while (acknowledged.size === 0) await Promise.race([pause(100), working])
        await Promise.race([pause(random() * sitting.longestMs), working])
        alive = false
      } finally {
        await phone.kill()
      }
    }
    const phone = await switchOn(folder)
    await sitting.open(phone.page, address)
    await look(phone.page, times)
    await phone.close()
  } finally {
    await close()
  }
  return { acknowledged: acknowledged.size, hits, losses }
}
