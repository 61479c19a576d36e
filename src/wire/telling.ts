import type { Haptics, Sound } from '../device/ports.ts'
import type { Card } from '../table/card/card.ts'
import { outputsOf, type ReadyCall } from '../table/card/outputs.ts'
import { hitFirst, newWords, type Spoken } from '../table/card/spoken.ts'
import { type Potter, potterOf } from '../table/model/potters.ts'
import type { Table } from '../table/model/state.ts'

/** Who else says calls, and which need not be said any more. */
export interface Caller {
  /** The person heard it, or a track that plays says it. */
  saysItself(call: ReadyCall): boolean
  called(call: ReadyCall): void
}

/** The moment that sound and vibration are to tell. */
export interface Telling {
  readonly table: Table
  /** Table time, ms. */
  readonly now: number
  readonly card: Card
  /** Whether the card can be seen: its line is said then, and places are called by it alone. */
  readonly shows: boolean
}

interface Phone {
  readonly sound: Pick<Sound, 'say' | 'saying' | 'quiet' | 'call' | 'warn'>
  readonly haptics: Pick<Haptics, 'feel'>
  readonly awake: { want(on: boolean): void }
}

/** What was called of a pot that waits with a coat: first and last when, table time in ms, how often, and whether by its place. */
interface Called {
  readonly since: number
  readonly at: number
  readonly times: number
  readonly named: boolean
}

/**
 * Minutes after it was first made at which a call is made again; after the last, every ten. Not after it was due: a
 * touch of another pot can say that it was due for long.
 */
const CALL_AT_MIN = [0, 1, 3, 6]
const THEN_EVERY_MIN = 10

/** What was called is not called again so soon, nor are the notes of its bucket for a pot that came due since, ms. */
const SOON_MS = 60_000

/** Who heard the notes of a bucket so shortly before is told the places alone: it would be the same call twice, ms. */
const NOTED_MS = 10_000

/** Makes the phone do what the card asks for: stay awake, say what it wants said, call what is ready. */
export function openTelling({ sound, haptics, awake }: Phone): (telling: Telling, caller?: Caller) => void {
  let asked: string | undefined
  let wanted: boolean | undefined
  let said: Spoken | undefined
  let latestHit: string | undefined
  let potter: Potter | undefined
  /** When the notes of a bucket sounded last, table time, ms. */
  const notes = new Map<string, number>()
  const called = new Map<string, Called>()

  const calledOf = (table: Table, potId: string): Called | undefined => called.get(coatOf(table, potId))

  /** The pots of a call that are to be heard of now: none of them twice in a minute, but by its place after its notes. */
  const unheard = (table: Table, { potIds, bucketId }: ReadyCall, names: boolean, now: number) => {
    const isAgain = (last: Called | undefined) =>
      last !== undefined && now - last.at >= SOON_MS && timesBy(now - last.since) > last.times
    if (potIds.some((potId) => isAgain(calledOf(table, potId)))) return potIds
    const soon = now - (notes.get(bucketId) ?? Number.NEGATIVE_INFINITY) < SOON_MS
    if (soon && !names) return []
    return potIds.filter((potId) => {
      const last = calledOf(table, potId)
      return names ? !last?.named : !last
    })
  }

  const callOut = (call: ReadyCall, say: Spoken, telling: Telling, caller: Caller | undefined): void => {
    const { table, now, shows } = telling
    const names = call.onCard || !shows
    const heard = unheard(table, call, names, now)
    // The notes of another bucket do not break into a line.
    if (heard.length === 0 || (!names && sound.saying())) return
    // Who joins a call is called again with it.
    const since = Math.min(now, ...call.potIds.map((potId) => calledOf(table, potId)?.since ?? now))
    const times = timesBy(now - since)
    for (const potId of heard) {
      const named = names || calledOf(table, potId)?.named === true
      called.set(coatOf(table, potId), { since, at: now, times, named })
    }
    const noted = names && now - (notes.get(call.bucketId) ?? Number.NEGATIVE_INFINITY) < NOTED_MS
    notes.set(call.bucketId, now)
    caller?.called(call)
    if (caller?.saysItself(call)) return
    const places = call.places.filter((_, i) => call.onCard || heard.includes(call.potIds[i] ?? ''))
    // What the hands hold goes where it belongs before they take up what is called: heard the other way round, its place
    // would be taken for theirs.
    const first = names && shows && said ? hitFirst(say, said) : []
    if (first.length > 0) said = { ...said, ...(say.hit ? { hit: say.hit } : {}) }
    sound.call(noted ? '' : call.bucketLetter, names ? places : [], call.bucketId, first)
    haptics.feel('long')
  }

  const tellCard = (say: Spoken, shows: boolean, table: Table): void => {
    const before = said
    const hit = table.takenBack?.hit ?? table.hits.at(-1)?.hit
    const isHit = hit !== latestHit
    latestHit = hit
    if (shows || !before) said = say
    // What stood there when the program opened was not brought by a hit.
    if (!shows || !before) return
    const words = newWords(say, before)
    if (words) sound.say(words)
    // What was said before a hit is over with it, as is the line of a card that is gone.
    else if (isHit || (before.card && !say.card)) sound.say([])
  }
  return (telling, caller) => {
    const { table, now, card, shows } = telling
    const outputs = outputsOf(table, now, card)
    // Turned to the other pair of hands, what was said to these is over.
    if (potter !== undefined && potter !== potterOf(table)) sound.quiet()
    potter = potterOf(table)
    if (outputs.awake !== wanted) {
      wanted = outputs.awake
      awake.want(outputs.awake)
    }
    if (outputs.pan?.key !== asked) {
      asked = outputs.pan?.key
      if (outputs.pan) {
        sound.warn(outputs.pan.words)
        haptics.feel('long')
      }
    }
    for (const call of outputs.calls) callOut(call, outputs.say, telling, caller)
    // What is said of a card comes after a call.
    tellCard(outputs.say, shows, table)
  }
}

/** A pot with the coat that it waits with, and the answers it got: a hit that is taken back and put back is one. */
const coatOf = (table: Table, potId: string): string => {
  const pot = table.pots[potId]
  return `${potId} ${pot?.dips.length} ${pot?.touches.length}`
}

/** How often a call should have been made that was first made so long ago. */
function timesBy(sinceMs: number): number {
  const min = sinceMs / 60_000
  const early = CALL_AT_MIN.filter((at) => at <= min).length
  const last = CALL_AT_MIN.at(-1) ?? 0
  return early + Math.max(0, Math.floor((min - last) / THEN_EVERY_MIN))
}
