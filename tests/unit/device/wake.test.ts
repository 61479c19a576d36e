import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { openAwake } from '../../../src/device/wake.ts'

/** A screen lock that can be lost. */
class Sentinel extends EventTarget {
  released = false
  async release(): Promise<void> {
    this.released = true
    this.dispatchEvent(new Event('release'))
  }
}

let page: EventTarget & { hidden: boolean }
let allowed: boolean
let held: Sentinel[]
const settled = () => new Promise((resolve) => setTimeout(resolve, 0))

beforeEach(() => {
  page = Object.assign(new EventTarget(), { hidden: false })
  allowed = true
  held = []
  const request = async () => {
    if (!allowed) throw new DOMException('no', 'NotAllowedError')
    const sentinel = new Sentinel()
    held.push(sentinel)
    return sentinel
  }
  vi.stubGlobal('document', page)
  vi.stubGlobal('navigator', { wakeLock: { request } })
})
afterEach(() => vi.unstubAllGlobals())

it('holds the screen while it is wanted, and lets it go', async () => {
  const awake = openAwake()
  expect(awake.state()).toBe('idle')
  awake.want(true)
  await settled()
  expect(awake.state()).toBe('held')
  awake.want(false)
  expect(awake.state()).toBe('idle')
  expect(held[0]?.released).toBe(true)
})

it('tells when it is lost to another app, and takes it again on return', async () => {
  const awake = openAwake()
  const told: string[] = []
  awake.onChange((state) => told.push(state))
  awake.want(true)
  await settled()
  page.hidden = true
  await held[0]?.release()
  page.dispatchEvent(new Event('visibilitychange'))
  await settled()
  expect(awake.state()).toBe('lost')
  page.hidden = false
  page.dispatchEvent(new Event('visibilitychange'))
  await settled()
  expect(told).toEqual(['held', 'lost', 'held'])
  expect(held).toHaveLength(2)
})

it('tells when it is refused, and asks again with the next touch', async () => {
  allowed = false
  const awake = openAwake()
  awake.want(true)
  await settled()
  expect(awake.state()).toBe('refused')
  page.dispatchEvent(new Event('pointerdown'))
  await settled()
  expect(awake.state()).toBe('refused')
  allowed = true
  page.dispatchEvent(new Event('pointerdown'))
  await settled()
  expect(awake.state()).toBe('held')
})

it('is absent on a phone without it, whatever is wanted', async () => {
  vi.stubGlobal('navigator', {})
  const awake = openAwake()
  awake.want(true)
  await settled()
  expect(awake.state()).toBe('absent')
  awake.want(false)
  expect(awake.state()).toBe('absent')
})
