import { describe, expect, it } from 'vitest'
import { openTelling } from '../../../src/wire/telling.ts'
import { Play } from '../table/play.ts'

/** Two pots that wait for one bucket, the second by so many seconds later, told of as the app does. */
function bench(laterS: number) {
  const play = new Play().act({ do: 'lay-demo' })
  for (const pot of Object.values(play.table.pots))
    if (pot.facts.number > 32) play.act({ do: 'gone', potId: pot.facts.potId })
  play.act({ do: 'logged', potId: 'demo.31', agoMin: 0 }).act({ do: 'sponged', potId: 'demo.31' })
  play
    .wait(laterS)
    .act({ do: 'logged', potId: 'demo.32', agoMin: 0 })
    .act({ do: 'sponged', potId: 'demo.32' })
  const calls: string[] = []
  const said: string[] = []
  const startMs = play.nowMs
  const tell = openTelling({
    sound: {
      say: (words) => said.push(words.join(' ')),
      saying: () => false,
      quiet: () => undefined,
      warn: () => undefined,
      call: (letter, places, _bucketId, first = []) =>
        calls.push(
          [
            Math.round((play.nowMs - startMs) / 1000),
            letter,
            ...first,
            ...places.map(({ place }) => place),
          ].join(' '),
        ),
    },
    haptics: { feel: () => true },
    awake: { want: () => undefined },
  })
  const look = (shows = true) =>
    tell(
      { table: play.table, now: play.nowMs, card: play.card, shows },
      { saysItself: () => false, called: () => undefined },
    )
  const pass = (s: number, shows = true) => {
    for (let i = 0; i < s; i++) {
      play.wait(1)
      look(shows)
    }
  }
  const until = (kind: string) => {
    for (let i = 0; i < 3000 && play.card.kind !== kind; i++) pass(1)
    expect(play.card.kind).toBe(kind)
  }
  return { play, calls, said, look, pass, until }
}

const places = (call: string | undefined) => call?.split(' ').slice(2).join(' ')

describe('a ready call', () => {
  it('is not said again of a pot whose companion was answered for', () => {
    const { play, calls, look, pass, until } = bench(5)
    until('ready')
    expect(calls.map(places)).toEqual(['1 2'])
    play.wait(5).act({ do: 'touched', potIds: ['demo.31'], dry: true })
    look()
    // It comes on the card again when the other one is out of the way.
    expect(play.card).toMatchObject({ kind: expect.stringMatching(/ready|stir/) })
    pass(20)
    expect(calls).toHaveLength(1)
  })

  it('names by its place what only its notes told of before, once the card asks for it', () => {
    const { play, calls, look, pass, until } = bench(5)
    play.act({ do: 'hold' })
    until('held')
    for (let i = 0; i < 3000 && calls.length === 0; i++) pass(1)
    expect(calls.map(places)).toEqual([''])
    play.act({ do: 'resume' })
    look()
    expect(play.card.kind).toBe('ready')
    expect(calls.map(places)).toEqual(['', '1 2'])
    // The notes are not heard twice within ten seconds.
    expect(calls.map((call) => call.split(' ')[1])).toEqual(['B', ''])
  })

  it('says with the screen off what came due since, and all of it when it is time to say it again', () => {
    const { play, calls, pass } = bench(90)
    play.act({ do: 'hold' })
    for (let i = 0; i < 3000 && calls.length === 0; i++) pass(1, false)
    pass(100, false)
    expect(calls.map(places)).toEqual(['1', '1', '2'])
    pass(90, false)
    expect(calls.slice(3).map(places)).toEqual(['1 2'])
  })

  it('is made again a minute, three and six minutes after the first time, then every ten', () => {
    const { play, calls, pass, until } = bench(5)
    until('ready')
    const [first = ''] = calls
    pass(17 * 60)
    const at = calls.map((call) =>
      Math.round((Number(call.split(' ')[0]) - Number(first.split(' ')[0])) / 60),
    )
    expect(at).toEqual([0, 1, 3, 6, 16])
    expect(play.card.kind).toBe('ready')
  })

  it('comes after the place where the pot in hand is set down: no one takes that for the place of what is called', () => {
    const { play, calls, said, look, until } = bench(5)
    until('ready')
    play.act({ do: 'pick', potId: 'demo.31' })
    play
      .act({ do: 'touched', potIds: ['demo.31'], dry: true })
      .act({ do: 'stirred', bucketId: 'demo.brackwater' })
    calls.length = 0
    play.bar()
    until('drip')
    play.wait(100).act({ do: 'sponged', potId: 'demo.31' })
    look()
    expect(play.card.kind).toBe('ready')
    expect(calls.map(places)).toEqual(['set down at A 1 next 2'])
    expect(said.filter((words) => words.includes('set down'))).toEqual([])
  })
})
