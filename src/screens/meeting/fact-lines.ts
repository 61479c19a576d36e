import type { BucketFacts, PotFacts, StackFacts } from '../../../shared/nouns.ts'
import type { ThingFacts } from '../../table/model/ask.ts'
import type { Table } from '../../table/model/state.ts'
import type { MeetingWords } from '../../words/meeting.ts'
import { amount, placeText } from '../text/amounts.ts'

const MEASURES = ['heightMm', 'rimMm', 'bellyMm', 'footMm', 'wallMm', 'footLineMm'] as const

/** How a thing is as one phone has it, where the other has it otherwise; a line each. */
export function factLines(words: MeetingWords, table: Table, thing: ThingFacts, other: ThingFacts): string[] {
  const lines = linesOf(words, table, thing)
  const theirs = linesOf(words, table, other)
  const own = lines.filter((line, i) => line !== theirs[i])
  return own.length > 0 ? own.filter((line) => line !== '') : [words.meeting.fact.other]
}

function linesOf(words: MeetingWords, table: Table, thing: ThingFacts): string[] {
  switch (thing.is) {
    case 'pot':
      return potLines(words, table, thing.facts)
    case 'stack':
      return stackLines(words, table, thing.facts)
    case 'bucket':
      return bucketLines(words, table, thing.facts)
  }
}

function potLines(
  words: MeetingWords,
  table: Table,
  { number, place, stackId, shape, whose }: PotFacts,
): string[] {
  const { fact } = words.meeting
  const { units } = table.settings
  return [
    fact.number(number),
    fact.place(placeText(place)),
    fact.stack(table.stacks[stackId]?.name ?? ''),
    whose === undefined ? '' : fact.whose(whose),
    words.desk.form[shape.form],
    ...MEASURES.map((field) => {
      const length = shape[field]
      return length === undefined ? '' : fact[field](amount(field, length, units))
    }),
  ]
}

function stackLines(words: MeetingWords, table: Table, { name, coats }: StackFacts): string[] {
  const { fact } = words.meeting
  const said = coats.map(({ bucketId, holdS }) =>
    fact.coat(table.buckets[bucketId]?.facts.name ?? '', amount('heldS', holdS, table.settings.units)),
  )
  return [name, said.join(', ')]
}

function bucketLines(words: MeetingWords, table: Table, facts: BucketFacts): string[] {
  const { fact } = words.meeting
  const { units } = table.settings
  return [
    facts.name,
    fact.letter(facts.letter),
    fact.litres(amount('litres', facts.litres, units)),
    fact.density(amount('gramsPerMl', facts.targetGramsPerMl, units)),
    fact.coatLimit(amount('limitMm', facts.limitMm, units)),
  ]
}
