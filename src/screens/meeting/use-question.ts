import { type ReadonlySignal, useComputed } from '@preact/signals'
import { freeLetter } from '../../table/entry/offer.ts'
import type { Answer, Ask, Heard, Said, ThingFacts } from '../../table/model/ask.ts'
import { dipOf } from '../../table/model/change.ts'
import { freePlace, nextNumber } from '../../table/model/places.ts'
import { potsOnTable } from '../../table/model/plan.ts'
import type { Table } from '../../table/model/state.ts'
import { MEETING_WORDS, type MeetingWords } from '../../words/meeting.ts'
import { useApp } from '../app.ts'
import { useDays } from '../days.ts'
import { useDesk } from '../desk/desk-app.ts'
import { useRoomWords } from '../desk/room-words.ts'
import { amount, placeText } from '../text/amounts.ts'
import { phoneName } from '../text/phone-name.ts'
import { factLines } from './fact-lines.ts'
import { type SettingTexts, settingName } from './setting-lines.ts'

/** One of two ways: what it is, who said so and when, and the key that says it is so, where it may be. */
interface Way {
  readonly title?: string
  readonly lines: readonly string[]
  readonly said?: string
  readonly key?: string
  readonly answer?: Answer
}

interface Question {
  readonly title: string
  readonly why: string
  readonly ways: readonly Way[]
  readonly caution?: string
  readonly both?: { readonly key: string; readonly answer: Answer | readonly string[] }
}

/** Words of this screen, with those of the others for clean hands. */
export function useMeetingWords(): ReadonlySignal<MeetingWords> {
  const { table } = useApp()
  const { words } = useDesk()
  return useComputed<MeetingWords>(() => ({
    ...words.value,
    meeting: MEETING_WORDS[table.value.settings.language],
  }))
}

/** The first of what is asked, in words. */
export function useQuestion(asks: readonly Ask[] | undefined): Question | undefined {
  const { table: signal, formats } = useApp()
  const said = useMeetingWords()
  const days = useDays()
  const room = useRoomWords()
  const [ask] = asks ?? []
  const [table, words] = [signal.value, said.value]
  const w = words.meeting
  const { units } = table.settings
  const moment = (epochMs: number) => days.moment(epochMs - table.skewMs)
  const texts: SettingTexts = { words, room, units, moment }
  const others = phonesIn(table, asks ?? [])
  // Where there is one other phone it needs no name.
  const nameOf = (from: string | undefined) =>
    from === undefined ? w.here : others.size > 1 ? w.third(phoneName(from)) : w.there
  const who = ({ from, at }: Said) => w.said(moment(at + table.skewMs), nameOf(from))
  const all = potsOnTable(table)
  const pot = (potId: string) => table.pots[potId]?.facts
  const name = (bucketId: string) => table.buckets[bucketId]?.facts.name ?? ''
  const whose = (potId: string) => nameOf(table.pots[potId]?.from)
  const ownName = (thing: Extract<ThingFacts, { is: 'settings' | 'pair' }>): string =>
    thing.is === 'settings'
      ? settingName(texts, thing.facts)
      : w.pair(name(thing.facts.overId), name(thing.facts.underId))
  const changedTitle = (thing: ThingFacts, times: number): string => {
    switch (thing.is) {
      case 'board':
      case 'firing':
      case 'kiln':
        return w.changed[thing.is](times)
      case 'settings':
      case 'pair':
        return w.changed.settings(ownName(thing), times)
      case 'pot':
      case 'plan':
        return w.changed[thing.is](pot(thing.facts.potId)?.number ?? 0, times)
      case 'restacked':
        return w.changed.plan(pot(thing.facts.potId)?.number ?? 0, times)
      case 'dip':
        return w.changed.dip(dipOf(table, thing.facts.dipId)?.pot.facts.number ?? 0, times)
      default:
        return w.changed[thing.is](thing.facts.name, times)
    }
  }
  const heardTitle = (thing: ThingFacts): string =>
    thing.is === 'settings' || thing.is === 'pair'
      ? ownName(thing)
      : thing.is === 'firing'
        ? w.firing
        : thing.is === 'kiln'
          ? w.kiln
          : thing.is === 'plan'
            ? w.dippedByOld(pot(thing.facts.potId)?.number ?? 0)
            : w.clay
  const heardLines = (thing: ThingFacts, other: ThingFacts | undefined): string[] =>
    factLines(texts, formats.value, table, thing, other ? [other] : [])
  const heardWay = ({ thing, before, ...said }: Heard): Way => ({
    title: heardTitle(thing),
    lines: [...heardLines(thing, before), ...(before ? [w.was(heardLines(before, thing).join(', '))] : [])],
    said: who(said),
  })
  const cautionOf = (things: readonly ThingFacts[]): Pick<Question, 'caution'> =>
    things.some(({ is, facts }) => is === 'settings' && facts.wax === 'hot')
      ? { caution: room.waxCaution }
      : {}
  switch (ask?.is) {
    case 'coat':
      return {
        title: w.coat(pot(ask.potId)?.number ?? 0, name(ask.bucketId)),
        why: w.coatWhy,
        ways: ask.dips.map((dip, i) => {
          const other = ask.dips[1 - i] ?? dip
          const made = table.pots[ask.potId]?.dips.find(({ dipId }) => dipId === dip.dipId)
          return {
            lines: made ? [w.held(amount('heldS', made.holdS, table.settings.units))] : [],
            said: who(dip),
            key: w.only,
            answer: { is: 'never', dipId: other.dipId, wentOn: dip.dipId },
          }
        }),
        both: { key: w.both, answer: { is: 'both', dipIds: [ask.dips[0].dipId, ask.dips[1].dipId] } },
      }
    case 'changed': {
      const [one] = ask.ways
      if (!one) return undefined
      return {
        title: changedTitle(one, ask.ways.length),
        ...cautionOf(ask.ways),
        why: w.why,
        ways: ask.ways.map((own) => ({
          lines: factLines(
            texts,
            formats.value,
            table,
            own,
            ask.ways.filter((way) => way !== own),
          ),
          said: who(own),
          key: w.so,
          answer: { is: 'so', thing: own },
        })),
      }
    }
    case 'gone': {
      const { potId, hits } = ask
      return {
        title: w.gone(table.pots[potId]?.facts.number ?? 0),
        why: w.goneWhy,
        ways: [
          { lines: [], said: who(ask.gone), key: w.off, answer: { is: 'off', potId } },
          { lines: [], said: who(ask.used), key: w.stillThere, answer: { is: 'there', potId, hits } },
        ],
      }
    }
    case 'removed': {
      const { thing, neededBy: by } = ask
      const id = thing.is === 'bucket' ? thing.facts.bucketId : thing.facts.stackId
      const why = by === undefined ? '' : ` ${w.needed(typeof by === 'number' ? w.pot(by) : by)}`
      const off = { key: w.away, answer: { is: 'away', thing: thing.is, id } } as const
      return {
        title: w.removed[thing.is](thing.facts.name),
        why: `${w.removedWhy}${why}`,
        ways: [
          { lines: [w.goneThere], said: who(ask.gone), ...(by === undefined ? off : {}) },
          { lines: [w.usedThere], said: who(ask.used), key: w.keep, answer: { is: 'so', thing } },
        ],
      }
    }
    case 'heard':
      return {
        title: w.heard,
        why: w.heardWhy,
        ways: ask.all.map(heardWay),
        ...cautionOf(ask.all.map(({ thing }) => thing)),
        both: { key: w.read, answer: ask.all.map(({ key }) => key) },
      }
    case 'number':
    case 'place': {
      const [first] = ask.potIds
      const facts = pot(first)
      const number = nextNumber(all.map((each) => each.facts.number))
      const place = placeText(freePlace(all.map((each) => each.facts.place)))
      if (!facts) return undefined
      return {
        title: ask.is === 'number' ? w.number(facts.number) : w.place(placeText(facts.place)),
        why: w.why,
        ways: ask.potIds.map((potId) => {
          const own = pot(potId)
          const theirs = own?.whose === undefined ? [] : [w.fact.whose(own.whose)]
          const at = own
            ? [words.desk.form[own.shape.form], w.fact.place(placeText(own.place)), ...theirs]
            : []
          return {
            lines:
              ask.is === 'number'
                ? at
                : own
                  ? [w.fact.number(own.number), words.desk.form[own.shape.form], ...theirs]
                  : [],
            said: whose(potId),
            key: ask.is === 'number' ? w.becomes(number) : w.goesTo(place),
            answer: { is: ask.is, potId },
          }
        }),
      }
    }
    case 'letter':
      return {
        title: w.letter(table.buckets[ask.bucketIds[0]]?.facts.letter ?? ''),
        why: w.why,
        ways: ask.bucketIds.map((bucketId) => ({
          lines: [name(bucketId)],
          key: w.relabel(freeLetter(table, name(bucketId), undefined)),
          answer: { is: 'letter', bucketId },
        })),
      }
    default:
      return undefined
  }
}

/** The other phones that any question, or any pot on the table, is of. */
function phonesIn(table: Table, asks: readonly Ask[]): ReadonlySet<string> {
  const said = asks.flatMap((ask): readonly Said[] => {
    if (ask.is === 'coat') return ask.dips
    if (ask.is === 'changed') return ask.ways
    if (ask.is === 'heard') return ask.all
    return ask.is === 'gone' || ask.is === 'removed' ? [ask.gone, ask.used] : []
  })
  const from = [...said, ...Object.values(table.pots)].map((one) => one.from)
  return new Set(from.filter((phone) => phone !== undefined))
}
