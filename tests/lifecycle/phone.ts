import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Browser, launch, type Page } from 'puppeteer-core'
import { CHROMIUM_ARGS, ensureChromium } from '../tools/chromium.mjs'

/** Switches of puppeteer's that would keep a hidden page as lively as a shown one. */
const SHELTERING = [
  '--disable-background-timer-throttling',
  '--disable-backgrounding-occluded-windows',
  '--disable-renderer-backgrounding',
]
const EXIT_MS = 10_000

/** A place that outlives the browser, as a phone's storage does. */
export async function openPocket(): Promise<{ readonly folder: string; empty(): Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'bucketside-phone-'))
  return { folder, empty: () => rm(folder, { recursive: true, force: true, maxRetries: 5 }) }
}

export interface Phone {
  readonly browser: Browser
  readonly page: Page
  /** Kills every process of the browser at once, as a phone out of memory or power does. */
  kill(): Promise<void>
  close(): Promise<void>
}

/** Starts Chromium on a folder and opens one page of a phone's size. */
export async function switchOn(folder: string): Promise<Phone> {
  const browser = await launch({
    executablePath: ensureChromium(),
    userDataDir: folder,
    args: CHROMIUM_ARGS,
    ignoreDefaultArgs: SHELTERING,
    defaultViewport: { width: 360, height: 640, hasTouch: true, isMobile: true },
  })
  const [page] = await browser.pages()
  return {
    browser,
    page: page ?? (await browser.newPage()),
    async kill() {
      const child = browser.process()
      if (!child?.pid) throw new Error('the browser runs elsewhere')
      const exited = new Promise<void>((resolve) => {
        child.once('exit', () => resolve())
        setTimeout(resolve, EXIT_MS).unref()
      })
      // The browser leads a process group of its own; a negative id means all of it.
      process.kill(-child.pid, 'SIGKILL')
      await exited
      // What a killed browser leaves to say that it runs.
      const locks = ['SingletonLock', 'SingletonSocket', 'SingletonCookie']
      await Promise.all(locks.map((name) => rm(join(folder, name), { force: true })))
    },
    close: () => browser.close(),
  }
}
