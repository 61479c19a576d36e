import { expect, it } from 'vitest'
import { numbers } from '../../fixtures/numbers.ts'
import { PlannedPlay } from './planned.ts'

const MIN_MS = 60_000
const DIPS = 8

interface Done {
  readonly is: string
  readonly at: number
}

/** The demo evening by the cards until so many dips, hands taking so many seconds a hit. */
function evening(least: number, most: number, seed: number): readonly Done[] {
  const play = new PlannedPlay().act({ do: 'lay-demo' })
  play.work = 3000
  play.ask()
  const random = numbers(seed)
  const done: Done[] = []
  let [hitS, waited] = [0, 0]
  while (done.filter(({ is }) => is === 'armed').length < DIPS) {
    play.wait(1)
    waited++
    if (waited % 60 === 0) play.ask()
    const { card } = play
    if (!card.big || card.kind === 'count' || waited < hitS) continue
    done.push({ is: card.kind, at: play.nowMs })
    play.act(card.big)
    hitS = least + (most - least) * random()
    waited = 0
  }
  return done
}

it.each([
  [10, 10, 1],
  [20, 45, 1],
  [20, 45, 2],
  [25, 60, 1],
])(
  'opens the first bucket when its first pot is about to be dry: hands of %i to %i s a hit, %i',
  (least, most, seed) => {
    const all = evening(least, most, seed)
    const stirs = all.flatMap(({ is }, k) => (is === 'stir' ? [k] : []))
    const first = all.findIndex(({ is }) => is === 'armed')
    expect(stirs.filter((k) => k < first)).toHaveLength(1)
    expect((all[first]!.at - all[stirs[0]!]!.at) / MIN_MS).toBeLessThan(3)
    // A stir is not asked for again before a dip was made on the last.
    for (const [k, from] of stirs.entries())
      expect(all.slice(from, stirs[k + 1]).map(({ is }) => is)).toContain('armed')
  },
  60_000,
)
