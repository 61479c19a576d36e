import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, expect, test } from '@playwright/test'
import { CHROMIUM_ARGS, ensureChromium } from '../tools/chromium.mjs'
import { writeWav } from '../tools/voice/signal.mjs'
import { APP_URL } from './places.ts'

const RATE = 48_000
const SPOKEN_S = 0.6
const EVERY_S = 1.5

/** What the microphone hears: a voiced sound of 0.6 s each second and a half, the second one louder. */
function wordAgainAndAgain(): Float32Array {
  return Float32Array.from({ length: RATE * EVERY_S * 4 }, (_, i) => {
    const s = (i / RATE) % EVERY_S
    const spoken = s > 0.5 && s < 0.5 + SPOKEN_S
    const loud = Math.floor(i / RATE / EVERY_S) === 1 ? 0.3 : 0.2
    return spoken ? loud * (Math.sin(2 * Math.PI * 220 * s) + 0.5 * Math.sin(2 * Math.PI * 660 * s)) : 0
  })
}

// Real time and a fake microphone: left to `npm run prove`.
if (process.env.PROVE)
  test("a bucket's name is recorded once, cut to the word, kept on this phone and in no journal", async () => {
    test.setTimeout(90_000)
    const folder = mkdtempSync(join(tmpdir(), 'names-'))
    const wav = join(folder, 'word.wav')
    writeFileSync(wav, writeWav(wordAgainAndAgain(), RATE))
    const fake = ['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream']
    const args = [...CHROMIUM_ARGS, ...fake, `--use-file-for-fake-audio-capture=${wav}`]
    const browser = await chromium.launch({ executablePath: ensureChromium(), args })
    try {
      const page = await browser.newPage({ viewport: { width: 360, height: 640 } })
      await page.goto(APP_URL)
      await page.getByRole('button', { name: 'demo evening' }).click()
      await expect(page.locator('.bench')).toBeVisible()
      await page.evaluate(() => location.replace('#/buckets/demo.gatepost'))
      await page.locator('summary', { hasText: 'Name, letter, pattern' }).click()
      const key = page.getByRole('button', { name: 'Hold and say it' })
      const read = () =>
        page.evaluate(
          () =>
            new Promise<{ lastsS?: number; journal: string }>((resolve, reject) => {
              const opening = indexedDB.open('bucketside-demo')
              opening.onerror = () => reject(opening.error)
              opening.onsuccess = () => {
                const reading = opening.result.transaction(['local', 'journal'])
                const names = reading.objectStore('local').get('names')
                const records = reading.objectStore('journal').getAll()
                reading.oncomplete = () => {
                  opening.result.close()
                  const name = names.result?.['demo.gatepost']
                  const lastsS = name && name.samples.length / name.rate
                  resolve({ lastsS, journal: JSON.stringify(records.result) })
                }
              }
            }),
        )
      // Said again where the machine stalled and its microphone swallowed half of it.
      await expect(async () => {
        await key.hover()
        await page.mouse.down()
        await expect(page.getByRole('button', { name: 'Say it' })).toBeVisible()
        // Long enough for the second word, wherever in the first one a slow start falls.
        await page.waitForTimeout(2900)
        await page.mouse.up()
        await expect(page.getByText('Kept.')).toBeVisible()
        const lasts = expect.poll(async () => (await read()).lastsS, { timeout: 2000 })
        await lasts.toBeGreaterThan(SPOKEN_S - 0.02)
        expect((await read()).lastsS).toBeLessThan(SPOKEN_S + 0.15)
      }).toPass({ timeout: 50_000 })
      await expect(page.getByRole('button', { name: 'Play' })).toBeVisible()
      expect((await read()).journal).not.toContain('samples')

      await page.reload()
      await page.getByRole('button', { name: 'Use the letter' }).click()
      await expect(page.getByRole('button', { name: 'Play' })).toBeHidden()
      await expect.poll(async () => (await read()).lastsS).toBeUndefined()
    } finally {
      await browser.close()
      rmSync(folder, { recursive: true })
    }
  })
