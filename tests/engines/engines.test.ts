/** The other two browsers on the start, the store, the network's absence and the beats. Reported as skipped where they cannot be had. */
import { createServer, type Server } from 'node:http'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { answer } from '../browser/harness/page.ts'
import { at } from '../lifecycle/built.ts'
import { ensureFirefox, ensureWebKit } from '../tools/engines.mjs'
import { serve } from '../tools/static.mjs'
import { type Engine, openFirefox, openWebKit } from './engine.ts'

const firefox = ensureFirefox()
const webkit = ensureWebKit()
const ENGINES = [
  { name: 'Firefox', open: firefox ? () => openFirefox(firefox) : null },
  { name: 'WebKitGTK', open: webkit ? () => openWebKit(webkit) : null },
]

const LONGEST_S = 60
const BEATS_MS = 10
const WORDS_MS = 20

/** The bare page with the sound modules. */
const serveSound = (): Promise<{ server: Server; address: string }> =>
  new Promise((resolve) => {
    const server = createServer(async (request, response) => {
      const { status, contentType, body } = await answer('sound', `http://localhost${request.url}`)
      response.writeHead(status, { 'content-type': contentType }).end(body)
    })
    server.listen(0, '127.0.0.1', () => {
      const listening = server.address()
      const port = typeof listening === 'object' && listening ? listening.port : 0
      resolve({ server, address: `http://localhost:${port}/` })
    })
  })

const stop = (server: Server) =>
  new Promise<void>((resolve) => {
    server.close(() => resolve())
    server.closeAllConnections()
  })

const quoted = (text: string): string => JSON.stringify(text)
const there = (selector: string): string => `document.querySelector(${quoted(selector)}) !== null`
const click = (selector: string): string => `document.querySelector(${quoted(selector)}).click()`
const BAR = '.bench [data-press="bar"]'

/** How many records the journal on this phone holds. */
const RECORDS = `new Promise((resolve, reject) => {
  const opening = indexedDB.open('bucketside-demo')
  opening.onerror = () => reject(opening.error)
  opening.onsuccess = () => {
    const counting = opening.result.transaction('journal').objectStore('journal').count()
    counting.onsuccess = () => { opening.result.close(); resolve(counting.result) }
    counting.onerror = () => reject(counting.error)
  }
})`

/** Greatest distance of a heard beat from the asked, s, over counts of 1 to 60 s. */
const WORST_BEAT = `(async () => {
  let worst = 0
  for (let holdS = 1; holdS <= ${LONGEST_S}; holdS++) {
    const { asked, heard } = await harness.countTones({ leadS: 3 + (holdS % 6), lowerS: (holdS % 7) * 0.45, holdS })
    const beats = heard.map((o) => o.atS).filter((atS) => atS < asked.at(-1) + 0.1)
    if (beats.length !== asked.length) throw new Error(holdS + ' s: ' + beats.length + ' of ' + asked.length + ' beats')
    asked.forEach((at, i) => { worst = Math.max(worst, Math.abs(at - beats[i])) })
  }
  return worst
})()`

/** Greatest distance of a word of a count of 60 s from where it shall begin, s. */
const WORST_WORD = `(async () => {
  if ((await harness.loadVoice('en')) !== 'ready') throw new Error('no clips')
  const table = await (await fetch('/voice/en.json')).json()
  const { words, heard } = await harness.spokenCount({ leadS: 5, lowerS: 1.2, holdS: ${LONGEST_S} })
  const onBeat = words.filter((cue) => cue.onBeat)
  if (onBeat.length !== ${LONGEST_S} + 1) throw new Error(onBeat.length + ' words')
  return Math.max(...onBeat.map((cue) => {
    const begins = cue.atS - table.words[cue.word][2] + 0.004
    return Math.min(...heard.map((o) => Math.abs(o.atS - begins)))
  }))
})()`

const ms = (s: number): string => `${(s * 1000).toFixed(1)} ms`

for (const { name, open } of ENGINES)
  describe.skipIf(open === null)(name, () => {
    let engine: Engine

    beforeAll(async () => {
      if (open) engine = await open()
    }, 120_000)
    afterAll(async () => {
      await engine?.close()
    })

    const until = async (expression: string): Promise<void> => {
      await expect
        .poll(() => engine.run(expression).catch(() => false), { timeout: 60_000, interval: 200 })
        .toBe(true)
    }

    /** A page answers until the next one is there: it is told by a mark. */
    const reloaded = async (): Promise<void> => {
      await engine.run('window.before = true')
      await engine.run('setTimeout(() => location.reload(), 20)')
      await until(`window.before === undefined && ${there(BAR)}`)
    }

    it('starts, keeps a hit over a reload, and opens with its server stopped', async () => {
      const { server, port } = await serve({ root: at('dist') })
      try {
        await engine.open(`http://localhost:${port}/`)
        await until(there('.first button'))
        await until(`(() => {
          const demo = [...document.querySelectorAll('button')].find((one) => one.textContent.includes('demo evening'))
          demo?.click()
          return demo === undefined
        })()`)
        await until(there(BAR))
        const before = await engine.run<number>(RECORDS)
        await engine.run(click(BAR))
        await until(`${RECORDS}.then((count) => count > ${before})`)
        const after = await engine.run<number>(RECORDS)
        const face = `document.querySelector('.bench-main').textContent`
        const shown = await engine.run<string>(face)
        await reloaded()
        expect(await engine.run(RECORDS)).toBe(after)
        expect(await engine.run(face)).toBe(shown)
        await until('navigator.serviceWorker.ready.then(() => navigator.serviceWorker.controller !== null)')
      } finally {
        await stop(server)
      }
      await reloaded()
      await engine.run(click(BAR))
    }, 240_000)

    it(`has every beat of counts from 1 to ${LONGEST_S} s within ${BEATS_MS} ms, and every word within ${WORDS_MS}`, async () => {
      const { server, address } = await serveSound()
      try {
        await engine.open(address)
        await until(`typeof harness === 'object'`)
        const beat = await engine.run<number>(WORST_BEAT)
        const word = await engine.run<number>(WORST_WORD)
        console.log(`${name}: worst beat ${ms(beat)}, worst word ${ms(word)}`)
        expect(beat).toBeLessThan(BEATS_MS / 1000)
        expect(word).toBeLessThan(WORDS_MS / 1000)
      } finally {
        await stop(server)
      }
    }, 600_000)
  })
