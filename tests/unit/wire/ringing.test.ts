import { computed, signal } from '@preact/signals'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Wake } from '../../../src/device/ports.ts'
import { openRinging, type RingFacts } from '../../../src/wire/ringing.ts'
import { WORDS } from '../../../src/words/bench.ts'
import { formats } from '../../../src/words/format.ts'
import { Play } from '../table/play.ts'

const ANDROID = (version: number) =>
  `Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/${version}.0.0.0 Mobile Safari/537.36`
const OFF: RingFacts = { on: false, offered: false }

interface Posted {
  readonly title: string
  readonly tag: string
  readonly silent: boolean
  readonly timestamp: number
}
let posted: Posted[]
let visible: boolean

/** A phone of this browser that allows notices and plays no track. */
function phone(userAgent: string, permission = 'granted'): void {
  posted = []
  visible = true
  const registration = {
    active: {},
    showNotification: async (title: string, options: Omit<Posted, 'title'>) => {
      posted = [...posted.filter(({ tag }) => tag !== options.tag), { title, ...options }]
    },
    getNotifications: async ({ tag }: { tag: string }) =>
      posted
        .filter((one) => one.tag === tag)
        .map((one) => ({ close: () => (posted = posted.filter((other) => other !== one)) })),
  }
  vi.stubGlobal('Notification', { permission, requestPermission: async () => permission })
  vi.stubGlobal('navigator', { userAgent, serviceWorker: { getRegistration: async () => registration } })
  vi.stubGlobal('matchMedia', () => ({ matches: false }))
  vi.stubGlobal('fetch', () => Promise.reject(new TypeError('no network')))
  vi.stubGlobal(
    'Audio',
    class extends EventTarget {
      src = ''
      pause() {}
      removeAttribute() {}
    },
  )
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0))

/** Ringing beside one pot that waits for its second coat. */
function ringing(facts: RingFacts) {
  const play = new Play().act({ do: 'lay-demo' })
  for (const pot of Object.values(play.table.pots))
    if (pot.facts.number !== 33) play.act({ do: 'gone', potId: pot.facts.potId })
  play.act({ do: 'logged', potId: 'demo.33', agoMin: 0 })
  const table = signal(play.table)
  const now = signal(play.nowMs)
  const words = signal(WORDS.en)
  let woken = (_: Wake): void => undefined
  const lifecycle = {
    visible: () => visible,
    onWake: (listener: typeof woken) => {
      woken = listener
    },
    onSleep: () => undefined,
  }
  const opened = openRinging(
    {
      table,
      now,
      card: computed(() => play.card),
      words,
      formats: computed(() => formats(words.value, 'metric', 'en')),
      devices: { lifecycle },
      store: () => Promise.resolve(),
    } as never,
    facts,
  )
  return { opened, now, wake: () => woken({ reason: 'visible', gapMs: 0, atMs: now.peek() }) }
}

afterEach(() => vi.unstubAllGlobals())

describe('what the bench says of ringing', () => {
  it.each([
    ['proven', { browser: 'Chrome 141', rang: true }, 141],
    ['failed', { browser: 'Chrome 141', rang: false }, 141],
    ['untested', { browser: 'Chrome 141', rang: true }, 142],
    ['untested', undefined, 141],
  ] as const)('%s after %j in version %d', (said, proof, version) => {
    phone(ANDROID(version))
    const { opened } = ringing({ ...OFF, on: true, ...(proof ? { proof } : {}) })
    expect(opened.view.peek().proof).toBe(said)
  })
})

describe('notices', () => {
  beforeEach(() => phone(ANDROID(141)))

  it('name the next time at once and silently, and go when ringing is turned off', async () => {
    const { opened, now } = ringing(OFF)
    expect(posted).toEqual([])
    opened.set(true)
    await settled()
    expect(posted).toHaveLength(1)
    expect(posted[0]).toMatchObject({ tag: 'next', silent: true })
    expect(posted[0]!.title).toMatch(/^Next \d\d:\d\d: A3$/)
    expect(posted[0]!.timestamp).toBeGreaterThan(now.peek())
    opened.set(false)
    await settled()
    expect(posted).toEqual([])
  })

  it('ring for what comes due out of sight, and are taken away once it is seen', async () => {
    const { opened, now, wake } = ringing({ ...OFF, on: true })
    const call = { places: [{ board: 'A', place: 3 }], at: now.peek() } as never
    opened.called(call)
    await settled()
    expect(posted.filter(({ tag }) => tag === 'call')).toEqual([])
    visible = false
    opened.called(call)
    await settled()
    expect(posted.find(({ tag }) => tag === 'call')).toMatchObject({
      title: 'A 3 ready to touch',
      silent: false,
    })
    visible = true
    wake()
    await settled()
    expect(posted.some(({ tag }) => tag === 'call')).toBe(false)
  })

  it('are not posted where they are blocked, and that is told', async () => {
    phone(ANDROID(141), 'denied')
    const { opened } = ringing(OFF)
    opened.set(true)
    await settled()
    expect(posted).toEqual([])
    expect(opened.view.peek().notices).toBe('denied')
  })
})

it('a track that cannot be had is told as failed, and the page says its calls itself', async () => {
  phone(ANDROID(141))
  const { opened, now } = ringing(OFF)
  opened.set(true)
  await settled()
  expect(opened.view.peek().track).toBe('failed')
  expect(opened.saysItself({ potIds: ['demo.33'], at: now.peek() } as never)).toBe(false)
})
