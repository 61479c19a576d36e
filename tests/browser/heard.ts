import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { type CueTable, readCueTable } from '../../src/device/voice.ts'
import { at } from './places.ts'

const { words: CLIPS }: CueTable = readCueTable(JSON.parse(readFileSync(at('public/voice/en.json'), 'utf8')))
/** The words are one sound of over a minute; tones are far shorter. */
const SPRITE_S = 20

declare global {
  interface Window {
    /** Offsets of the clips started since the last look, s; those of one line together. */
    saidClips: number[][]
  }
}

/** Listens to what is handed to the loudspeaker. */
export const listen = (page: Page) =>
  page.addInitScript((spriteS) => {
    window.saidClips = []
    let line: number[] | undefined
    const start = AudioBufferSourceNode.prototype.start
    AudioBufferSourceNode.prototype.start = function (when = 0, offset = 0, duration?: number) {
      if (this.buffer && this.buffer.duration > spriteS) {
        if (!line) {
          line = []
          window.saidClips.push(line)
          queueMicrotask(() => {
            line = undefined
          })
        }
        line.push(offset)
      }
      return start.call(this, when, offset, duration)
    }
  }, SPRITE_S)

/** A decoder shifts all clips alike, by far less than the shortest of them lasts: the nearest is meant. */
const wordAt = (offsetS: number): string =>
  Object.entries(CLIPS).reduce((best, each) =>
    Math.abs(each[1][0] - offsetS) < Math.abs(best[1][0] - offsetS) ? each : best,
  )[0]

/** Lines said since the last look; counts and what belongs to them are said by themselves. */
export async function taken(page: Page): Promise<string[][]> {
  const lines = await page.evaluate(() => window.saidClips.splice(0))
  return lines.map((line) => line.map(wordAt)).filter((words) => !words.some((word) => COUNTED.has(word)))
}
const COUNTED: ReadonlySet<string> = new Set(['in', 'out', 'drip', 'sponge the foot', 'wipe the rim'])
