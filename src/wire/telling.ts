import type { Haptics, Sound } from '../device/ports.ts'
import type { Card } from '../table/card/card.ts'
import { outputsOf, type ReadyCall } from '../table/card/outputs.ts'
import { newWords, type Spoken } from '../table/card/spoken.ts'
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

/** Makes the phone do what the card asks for: stay awake, say what it wants said, call what is ready. */
export function openTelling({ sound, haptics, awake }: Phone): (telling: Telling, caller?: Caller) => void {
  let asked: string | undefined
  let wanted: boolean | undefined
  let said: Spoken | undefined
  let latestHit: string | undefined
  let potter: Potter | undefined
  const called = new Set<string>()

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
  return ({ table, now, card, shows }, caller) => {
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
    for (const call of outputs.calls) {
      // The notes of another bucket do not break into a line.
      if (called.has(call.key) || (shows && !call.onCard && sound.saying())) continue
      called.add(call.key)
      caller?.called(call)
      if (caller?.saysItself(call)) continue
      sound.call(call.bucketLetter, call.onCard || !shows ? call.places : [], call.bucketId)
      haptics.feel('long')
    }
    for (const key of called) if (!outputs.calls.some((call) => call.key === key)) called.delete(key)
    // What is said of a card comes after a call.
    tellCard(outputs.say, shows, table)
  }
}
