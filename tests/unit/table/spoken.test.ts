import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { CoverFacts } from '../../../shared/nouns.ts'
import { bucketOf } from '../../../src/device/sound-plan.ts'
import type { CueTable } from '../../../src/device/voice.ts'
import { outputsOf } from '../../../src/table/card/outputs.ts'
import { newWords, panWords, spokenOf } from '../../../src/table/card/spoken.ts'
import { Play } from './play.ts'

const table = (language: string): CueTable =>
  JSON.parse(readFileSync(new URL(`../../../public/voice/${language}.json`, import.meta.url), 'utf8'))
const TABLES = [table('en'), table('es')]

const sayOf = (play: Play) => outputsOf(play.table, play.nowMs - play.table.skewMs, play.card).say
/** All that is said beside the card, as if nothing had been said before. */
const saidNow = (play: Play) => newWords(sayOf(play), {})
/** Words with a bucket's name in place of its letter. */
const heard = (play: Play): string =>
  (saidNow(play) ?? [])
    .map((word) => {
      const { bucketId } = bucketOf(word)
      return bucketId === undefined ? word : (play.table.buckets[bucketId]?.facts.name ?? word)
    })
    .join(' ')

const only = (...numbers: number[]): Play => {
  const play = new Play().act({ do: 'lay-demo' })
  for (const { facts } of Object.values(play.table.pots))
    if (!numbers.includes(facts.number)) play.act({ do: 'gone', potId: facts.potId })
  return play
}

/** Hits the bar, and lets time pass where it rests, until a card of this kind shows. */
const until = (play: Play, kind: string): Play => {
  for (let i = 0; i < 5000 && play.card.kind !== kind; i++)
    if (play.card.big && play.card.kind !== 'count') play.bar()
    else play.wait(5)
  expect(play.card.kind).toBe(kind)
  return play
}

describe('what the voice says at the bench', () => {
  it('has the pot in hand set down before a stir, as the card does', () => {
    const play = until(only(31, 33), 'stir')
    const words = spokenOf(play.table, { ...play.card, inHand: 'demo.31' }, play.nowMs).card?.words
    expect(words?.slice(0, 6)).toEqual(['set down', 'at', 'A', '1', 'next', 'stir'])
  })

  it('follows two pots from wax to the second dip', () => {
    const play = only(31, 33)
    expect(heard(play)).toBe('wax 31 A 1')
    expect(heard(play.bar())).toBe('wax 33 A 3')
    until(play, 'wipe')
    expect(heard(play)).toBe('wipe 31 A 1')
    until(play, 'stir')
    // The second pot still dries from its wipe.
    expect(heard(play)).toMatch(/^stir Gatepost/)
    until(play, 'armed')
    expect(heard(play)).toBe('31 A 1 Gatepost 4 seconds')
    play.bar()
    expect(saidNow(play)).toBeUndefined()
    until(play, 'drip').wait(60)
    expect(play.card.kind).toBe('armed')
    expect(heard(play)).toBe('set down at A 1 next 33 A 3 Gatepost 4 seconds')
    play.bar()
    until(play, 'drip').wait(12)
    play.bar()
    expect(heard(play)).toBe('set down at A 3')
    play.act({ do: 'take-back' })
    expect(heard(play)).toBe('taken back')
  })

  it('says what is the same once, and anew when the card comes again', () => {
    const play = only(33)
    const first = sayOf(play).card?.key
    play.wait(30)
    expect(sayOf(play).card?.key).toBe(first)
    until(play, 'armed')
    const armed = sayOf(play).card?.key
    play.wait(301)
    expect(play.card.kind).toBe('stir')
    const again = sayOf(play).card?.key
    expect(again).not.toBe(armed)
    until(play, 'armed')
    expect(sayOf(play).card?.key).toBe(armed)
    expect(heard(play)).toBe('33 A 3 Gatepost 4 seconds')
  })

  it('has a clip in both languages for every word of a whole evening, and for every bucket', () => {
    const play = only(31, 34)
    const words = new Set<string>()
    for (let i = 0; i < 3000 && play.card.kind !== 'closed'; i++) {
      for (const word of saidNow(play) ?? []) words.add(bucketOf(word).letter ?? word)
      if (play.card.big && play.card.kind !== 'count') play.bar()
      else play.wait(20)
    }
    for (const word of saidNow(play) ?? []) words.add(word)
    expect(heard(play)).toBe('2 pots 5 coats')
    for (const word of panWords({ onMs: 0, times: 1 })?.words ?? []) words.add(word)
    expect([...words]).toEqual(
      expect.arrayContaining([
        'stir',
        'wax pan is on',
        'return it to',
        'pour',
        'check the foot',
        'lid on',
        'tools',
        'settling bucket',
        'wet mop',
        'coats',
        'G',
        'B',
        'H',
      ]),
    )
    for (const { words: clips } of TABLES)
      for (const word of words) expect(Object.keys(clips), word).toContain(word)
  })

  it('calls halves and single seconds by their own words, and a number without a word by its place', () => {
    const play = only(33)
    const stack = play.table.stacks[play.table.pots['demo.33']!.facts.stackId]!
    play.act({
      do: 'set-stack',
      stack: { ...stack, coats: stack.coats.map((coat) => ({ ...coat, holdS: 2.5 })) },
    })
    const pot = play.table.pots['demo.33']!.facts
    play.act({ do: 'set-pot', pot: { ...pot, number: 133 } })
    until(play, 'armed')
    expect(heard(play)).toBe('A 3 Gatepost 2 and a half seconds')
    play.act({
      do: 'set-stack',
      stack: { ...stack, coats: stack.coats.map((coat) => ({ ...coat, holdS: 1 })) },
    })
    expect(heard(play)).toBe('A 3 Gatepost one second')
  })

  it('asks what the bar asks twice: a coat that is on already, and a bucket that the plan does not say', () => {
    const play = only(33).act({ do: 'logged', potId: 'demo.33', agoMin: 10 })
    play.act({ do: 'touched', potIds: ['demo.33'], dry: true })
    const into = (bucketId: string) => {
      play.act({ do: 'stirred', bucketId }).act({ do: 'pick', potId: 'demo.33', bucketId })
      expect(play.card).toMatchObject({ kind: 'armed', heldBar: { again: true } })
      return heard(play)
    }
    expect(into('demo.gatepost')).toBe('33 A 3 already has Gatepost really again 4 seconds')
    expect(into('demo.heather')).toBe('33 A 3 to the skirt Heather 3 seconds the plan says Brackwater')
  })

  it('says how a coat goes on that is no dip of the whole pot, in words that have clips', () => {
    const play = only(33)
    const stack = play.table.stacks[play.table.pots['demo.33']!.facts.stackId]!
    until(play, 'armed')
    const covered = (...covers: CoverFacts[]) => {
      const coats = covers.map((cover) => ({ ...stack.coats[0]!, cover }))
      play.act({ do: 'set-stack', stack: { ...stack, coats } })
      for (const word of saidNow(play) ?? [])
        for (const { words: clips } of TABLES)
          expect(Object.keys(clips)).toContain(bucketOf(word).letter ?? word)
      return heard(play)
    }
    expect(covered({ kind: 'full' })).toBe('33 A 3 Gatepost 4 seconds')
    expect(covered({ kind: 'inside' })).toBe('33 A 3 pour Gatepost 4 seconds')
    expect(covered({ kind: 'toSkirt' })).toBe('33 A 3 to the skirt Gatepost 4 seconds')
    expect(covered({ kind: 'downTo', edgeUpMm: 30 })).toBe('33 A 3 rim first Gatepost 4 seconds')
    expect(covered({ kind: 'upTo', edgeUpMm: 50 })).toBe('33 A 3 foot first Gatepost 4 seconds')
    expect(covered({ kind: 'side' }, { kind: 'side' })).toBe('33 A 3 one half Gatepost 4 seconds')
    expect(covered({ kind: 'collar', depthMm: 20 })).toBe('stir Gatepost one pot pour')
    expect(heard(play.bar())).toBe('33 A 3 collar Gatepost 4 seconds')
  })
})
