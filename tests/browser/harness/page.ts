/** A bare page with modules of the app bundled into it, served from nowhere. */
import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import type { Page } from '@playwright/test'
import { build } from 'vite'

const path = (from: string): string => fileURLToPath(new URL(from, import.meta.url))
/** Reserved by RFC 2606; every request to it is answered here. */
export const ORIGIN = 'https://harness.invalid'
const TYPES: Record<string, string> = { json: 'application/json', mp3: 'audio/mpeg' }

const bundles = new Map<string, Promise<string>>()

/** One script of `harness/<name>.ts` and all it imports. */
export function bundle(name: string): Promise<string> {
  const known = bundles.get(name) ?? make(name)
  bundles.set(name, known)
  return known
}

async function make(name: string): Promise<string> {
  const entry = path(`./${name}.ts`)
  const built = await build({
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    build: { write: false, minify: false, lib: { entry, formats: ['iife'], name: 'harnessModule' } },
  })
  const [result] = Array.isArray(built) ? built : [built]
  if (!result || !('output' in result)) throw new Error(`no bundle of ${name}`)
  return result.output[0].code
}

export interface Answer {
  readonly status: number
  readonly contentType: string
  readonly body: string | Buffer
}

/** What the bare page with `harness/<name>.ts` gets for an address: itself, its script, or a file of public/. */
export async function answer(name: string, address: string): Promise<Answer> {
  const { pathname } = new URL(address)
  if (pathname === '/') {
    const body = `<!doctype html><meta name="viewport" content="width=device-width"><title>harness</title><body style="height:100vh"><script src="script.js"></script>`
    return { status: 200, contentType: 'text/html', body }
  }
  if (pathname === '/script.js')
    return { status: 200, contentType: 'text/javascript', body: await bundle(name) }
  const contentType = TYPES[pathname.split('.').at(-1) ?? ''] ?? 'application/octet-stream'
  const body = await readFile(path(`../../../public${pathname}`)).catch(() => null)
  return body ? { status: 200, contentType, body } : { status: 404, contentType, body: '' }
}

/** Opens the bare page with the script of `harness/<name>.ts`; public/ is served beside it. */
export async function openHarness(page: Page, name: string): Promise<void> {
  await page.route(`${ORIGIN}/**`, async (route) => route.fulfill(await answer(name, route.request().url())))
  await page.goto(`${ORIGIN}/`)
}
