import { expect, test } from 'vitest'
import { notHad } from '../../../src/ui/not-had.ts'

const w = { missing: 'not here, and no network', faulty: 'broken' }

test.each([
  ['nothing kept, no network', false, false, w.missing],
  ['nothing kept, a network', false, true, w.faulty],
  ['all kept, no network', true, false, w.faulty],
  ['all kept, a network', true, true, w.faulty],
])('a part that cannot be had is told for what it is: %s', (_what, kept, online, said) => {
  expect(notHad(w, kept, online)).toBe(said)
})
