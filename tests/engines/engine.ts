import { type ChildProcess, spawn } from 'node:child_process'
import { createServer } from 'node:net'
import puppeteer from 'puppeteer-core'
import type { WebKit } from '../tools/engines.mjs'

/** A browser that opens addresses and works out expressions on the page; a promise is awaited. */
export interface Engine {
  open(address: string): Promise<void>
  run<T>(expression: string): Promise<T>
  close(): Promise<void>
}

/** Firefox, driven over WebDriver BiDi. */
export async function openFirefox(path: string): Promise<Engine> {
  const browser = await puppeteer.launch({
    browser: 'firefox',
    executablePath: path,
    extraPrefsFirefox: { 'media.autoplay.default': 0 },
  })
  const page = await browser.newPage()
  return {
    async open(address) {
      await page.goto(address)
    },
    run: <T>(expression: string) => page.evaluate(expression) as Promise<T>,
    close: () => browser.close(),
  }
}

const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms))

const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = createServer()
    server.once('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const address = server.address()
      server.close(() => resolve(typeof address === 'object' && address ? address.port : 0))
    })
  })

const SCRIPT_MS = 300_000

/** One command of the WebDriver protocol (W3C WebDriver 2, 6.3). */
async function command(
  base: string,
  method: 'GET' | 'POST' | 'DELETE',
  path: string,
  body?: object,
): Promise<unknown> {
  const response = await fetch(`${base}${path}`, {
    method,
    ...(body ? { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } } : {}),
  })
  const { value } = (await response.json()) as { value: unknown }
  if (!response.ok) throw new Error(`${method} ${path}: ${JSON.stringify(value)}`)
  return value
}

async function untilReady(base: string): Promise<void> {
  for (let tried = 0; ; tried++) {
    try {
      await command(base, 'GET', '/status')
      return
    } catch (error) {
      if (tried > 100) throw error
      await pause(200)
    }
  }
}

/** WebKitGTK, driven over WebDriver, on a screen that nobody sees. */
export async function openWebKit({ browser, driver, screen }: WebKit): Promise<Engine> {
  const port = await freePort()
  const child = spawn(screen, ['-a', driver, `--port=${port}`], { stdio: 'ignore', detached: true })
  const base = `http://127.0.0.1:${port}`
  try {
    await untilReady(base)
    const options = { binary: browser, args: ['--automation'] }
    const capabilities = { alwaysMatch: { 'webkitgtk:browserOptions': options } }
    const { sessionId } = (await command(base, 'POST', '/session', { capabilities })) as { sessionId: string }
    const session = `/session/${sessionId}`
    await command(base, 'POST', `${session}/timeouts`, { script: SCRIPT_MS })
    return {
      async open(url) {
        await command(base, 'POST', `${session}/url`, { url })
      },
      async run<T>(expression: string) {
        const script = `const done = arguments[arguments.length - 1]
          Promise.resolve().then(() => (${expression})).then((value) => done({ value }), (error) => done({ error: String(error) }))`
        const answer = await command(base, 'POST', `${session}/execute/async`, { script, args: [] })
        const { value, error } = answer as { value: T; error?: string }
        if (error) throw new Error(error)
        return value
      },
      async close() {
        await command(base, 'DELETE', session).catch(() => undefined)
        stop(child)
      },
    }
  } catch (error) {
    stop(child)
    throw error
  }
}

/** Ends the driver with its screen: a negative id means the whole group that was started for it. */
function stop(child: ChildProcess): void {
  if (child.pid) process.kill(-child.pid, 'SIGTERM')
}
