import { createHash } from 'node:crypto'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { cacheName, isWhole, keepAll, keepOnly, keptFile } from '../../../sw/files.ts'

const BASE = 'https://bench.example/app/'
const urlOf = (of: Request | string) => new URL(typeof of === 'string' ? of : of.url, BASE).href
const entry = (url: string, text: string) => ({
  url,
  integrity: `sha256-${createHash('sha256').update(text).digest('base64')}`,
})

/** As the answer to a request that was sent on; what is copied of it stays so. */
const redirected = (response: Response): Response => {
  const clone = response.clone.bind(response)
  return Object.defineProperties(response, {
    redirected: { value: true },
    clone: { value: () => redirected(clone()) },
  })
}

/** What a browser keeps, by cache and address; `torn` ones cannot be read. */
let kept: Map<string, Map<string, Response>>
let torn: Set<string>
/** What the host puts out. */
let host: Record<string, string>
/** Of which types it says they are, and which it has sent on from elsewhere. */
let said: Record<string, string>
let sentOn: Set<string>

beforeEach(() => {
  kept = new Map()
  torn = new Set()
  host = {}
  said = {}
  sentOn = new Set()
  vi.stubGlobal('location', { href: `${BASE}sw.js` })
  vi.stubGlobal('caches', {
    keys: async () => [...kept.keys()],
    delete: async (name: string) => kept.delete(name),
    open: async (name: string) => {
      if (torn.has(name)) throw new DOMException('torn', 'UnknownError')
      const files = kept.get(name) ?? new Map<string, Response>()
      kept.set(name, files)
      return {
        keys: async () => [...files.keys()].map((url) => ({ url })),
        match: async (of: Request | string) => files.get(urlOf(of))?.clone(),
        put: async (of: Request | string, response: Response) => void files.set(urlOf(of), response),
      }
    },
  })
  vi.stubGlobal('fetch', async (of: string) => {
    const text = host[of]
    if (text === undefined) return new Response('gone', { status: 404 })
    const type = said[of]
    const response = new Response(text, type === undefined ? {} : { headers: { 'content-type': type } })
    return sentOn.has(of) ? redirected(response) : response
  })
})
afterEach(() => void vi.unstubAllGlobals())

const textOf = async (request: string, version: string) => (await keptFile(request, version))?.text()

describe('a version', () => {
  const files = [entry('index.html', 'page'), entry('bench-1.js', 'bench')]

  test('is kept whole where the host has every file as it should be', async () => {
    host = { 'index.html': 'page', 'bench-1.js': 'bench' }
    await keepAll('one', files)
    expect(await isWhole('one', files)).toBe(true)
    expect(await textOf('bench-1.js', 'one')).toBe('bench')
  })

  test.each([
    ['an error page', { 'index.html': 'page', 'bench-1.js': '<!doctype html>' }],
    ['half a file', { 'index.html': 'page', 'bench-1.js': 'ben' }],
    ['a file that is missing', { 'index.html': 'page' }],
    ['an empty file', { 'index.html': '', 'bench-1.js': 'bench' }],
  ])('is refused with %s, and made whole once it can be', async (_what, broken) => {
    host = broken as Record<string, string>
    await expect(keepAll('one', files)).rejects.toThrow()
    expect(await isWhole('one', files)).toBe(false)
    host = { 'index.html': 'page', 'bench-1.js': 'bench' }
    await keepAll('one', files)
    expect(await isWhole('one', files)).toBe(true)
  })

  test('takes from the one before what has not changed, without the network', async () => {
    host = { 'index.html': 'page', 'bench-1.js': 'bench' }
    await keepAll('one', files)
    host = { 'index.html': 'next page' }
    await keepAll('two', [entry('index.html', 'next page'), entry('bench-1.js', 'bench')])
    expect(await textOf('bench-1.js', 'two')).toBe('bench')
  })
})

describe('whatever the host says of a file', () => {
  const files = [entry('index.html', 'page'), entry('bench-1.js', 'bench'), entry('bench-1.css', 'look')]
  const given = async (url: string, version: string) => {
    const response = await keptFile(url, version)
    return { type: response?.headers.get('content-type'), text: await response?.text() }
  }
  beforeEach(() => {
    host = { 'index.html': 'page', 'bench-1.js': 'bench', 'bench-1.css': 'look' }
  })

  test('a page that was sent on is kept as one that may answer a navigation', async () => {
    sentOn.add('index.html')
    await keepAll('one', files)
    expect((await keptFile('index.html', 'one'))?.redirected).toBe(false)
    expect(kept.get(cacheName('one'))?.get(urlOf('index.html'))?.redirected).toBe(false)
    expect(await textOf('index.html', 'one')).toBe('page')
  })

  test('it is kept and given out as what it is, with the other headers', async () => {
    said = { 'index.html': 'text/plain', 'bench-1.js': 'text/html', 'bench-1.css': '' }
    await keepAll('one', files)
    expect(await given('index.html', 'one')).toEqual({ type: 'text/html; charset=utf-8', text: 'page' })
    expect(await given('bench-1.js', 'one')).toEqual({
      type: 'text/javascript; charset=utf-8',
      text: 'bench',
    })
    expect(await given('bench-1.css', 'one')).toEqual({ type: 'text/css; charset=utf-8', text: 'look' })
  })

  test('what an earlier worker kept as it was said is given out right, and copied right', async () => {
    const files = new Map([
      [urlOf('index.html'), redirected(new Response('page', { headers: { 'content-type': 'text/html' } }))],
      [urlOf('bench-1.js'), new Response('bench', { headers: { 'content-type': 'text/plain' } })],
    ])
    kept.set(cacheName('old'), files)
    expect((await keptFile('index.html', 'old'))?.redirected).toBe(false)
    expect(await given('bench-1.js', 'old')).toEqual({
      type: 'text/javascript; charset=utf-8',
      text: 'bench',
    })
    host = {}
    await keepAll('new', [entry('index.html', 'page'), entry('bench-1.js', 'bench')])
    const copied = kept.get(cacheName('new'))
    expect(copied?.get(urlOf('index.html'))?.redirected).toBe(false)
    expect(copied?.get(urlOf('bench-1.js'))?.headers.get('content-type')).toContain('text/javascript')
  })

  test('what it says rightly stays the browser’s own response', async () => {
    said = { 'bench-1.js': 'text/javascript' }
    await keepAll('one', files)
    expect((await given('bench-1.js', 'one')).type).toBe('text/javascript')
  })
})

describe('after an update', () => {
  beforeEach(async () => {
    for (const version of ['old', 'before', 'now']) {
      host = { 'index.html': version, [`bench-${version}.js`]: version }
      await keepAll(version, [entry('index.html', version), entry(`bench-${version}.js`, version)])
    }
  })

  test('a page of the version before finds its parts, and the page given out is the new one', async () => {
    await keepOnly(['now', 'before', undefined])
    expect(await textOf('index.html', 'now')).toBe('now')
    expect(await textOf('bench-before.js', 'now')).toBe('before')
    expect(await textOf('bench-old.js', 'now')).toBeUndefined()
  })

  test('caches that are not the app’s stay', async () => {
    kept.set('elsewhere', new Map())
    await keepOnly(['now'])
    expect([...kept.keys()].sort()).toEqual([cacheName('now'), 'elsewhere'].sort())
  })

  test('files that cannot be read any more are left to the other version, or to the network', async () => {
    torn.add(cacheName('now'))
    expect(await textOf('bench-before.js', 'now')).toBe('before')
    for (const version of ['old', 'before']) torn.add(cacheName(version))
    expect(await keptFile('index.html', 'now')).toBeUndefined()
  })
})
