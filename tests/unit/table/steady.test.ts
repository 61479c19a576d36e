import { expect, it } from 'vitest'
import { handsLine } from '../../../src/table/order/hands-line.ts'
import { numbers } from '../../fixtures/numbers.ts'
import { twelve } from '../../fixtures/twelve.ts'
import { PlannedPlay } from './planned.ts'

const HOUR_MS = 3_600_000

const demo = () => new PlannedPlay().act({ do: 'lay-demo' })
const table = () => {
  const play = new PlannedPlay()
  for (const [i, events] of twelve().entries()) play.append(events, `laid-${i}`)
  play.append([{ kind: 'settings-set', settings: { readyMeans: 'touch' } }], 'touched')
  return play.wait(3600)
}

/** Told at a hit: how late for the kiln, ms, and how many touches had taught by then. */
interface Told {
  readonly lateMs: number
  readonly touches: number
  readonly dips: number
  readonly dip: boolean
}

/** A sitting by the cards, hands taking 25 to 60 s a hit, every touch dry. */
function told(play: PlannedPlay): readonly Told[] {
  const random = numbers(3)
  play.work = 3000
  play.append([{ kind: 'settings-set', settings: { kilnOnAt: play.nowMs + 20 * HOUR_MS } }], 'kiln')
  play.ask()
  const all: Told[] = []
  const pots = () => Object.values(play.table.pots)
  for (let i = 0; i < 4000 && play.card.kind !== 'lid'; i++) {
    const { card } = play
    if (!card.big || card.kind === 'count' || (card.kind === 'drip' && !card.done)) {
      play.wait(5)
      continue
    }
    play.wait(card.kind === 'stir' ? (card.change ? 150 : 50) : 25 + 35 * random())
    const { big, kind } = play.card
    if (!big) continue
    play.act(big)
    const line = handsLine(play.table, play.schedule, play.nowMs)
    if (line?.slackMs === undefined) continue
    all.push({
      lateMs: -line.slackMs,
      touches: pots().reduce((n, pot) => n + pot.touches.length, 0),
      dips: pots().reduce((n, pot) => n + pot.dips.length, 0),
      dip: kind === 'armed',
    })
  }
  return all
}

it.each([
  ['the demo evening', demo, 21],
  ['twelve pots', table, 30],
])(
  'tells over %s nearly the same lateness from dip to dip: only touches move it far',
  (_name, laid, coats) => {
    const all = told(laid())
    expect(all.at(-1)!.dips).toBeGreaterThanOrEqual(coats - 1)
    const spans = all.map(({ lateMs }) => lateMs)
    expect(Math.max(...spans) - Math.min(...spans)).toBeGreaterThan(HOUR_MS)
    const late = all.slice(1).flatMap((here, i) => {
      const before = all[i]!
      const isLast = here.dips > (2 * coats) / 3
      return here.dip && isLast && here.touches === before.touches ? [here.lateMs - before.lateMs] : []
    })
    expect(late.length).toBeGreaterThan(3)
    // Of waits of half a day and more.
    const minutes = late.map((ms) => Math.abs(ms) / 60_000)
    expect(Math.max(...minutes)).toBeLessThan(20)
    expect(Math.abs(late.reduce((sum, ms) => sum + ms, 0)) / 60_000 / late.length).toBeLessThan(8)
  },
  60_000,
)
