import { forecastOf } from '../../table/forecast/forecast.ts'
import type { PotState, Table } from '../../table/model/state.ts'
import type { Words } from '../../words/bench.ts'
import { LATE_WORDS } from '../../words/late.ts'
import { nameOf } from '../text/pot-text.ts'

/** The place of a pot that tells whether it is dry: the slowest that a finger reaches. */
function placeToTouch(table: Table, pot: PotState): string | undefined {
  const forecast = forecastOf(table, pot)
  if (!forecast) return undefined
  const { inside, neck, halfway, outside, overlap } = LATE_WORDS[table.settings.language].where
  if (forecast.halves) return overlap
  const { face, zone } = forecast.pot.touchAt
  if (face === 'inside') return zone === 'inside' ? inside : neck
  return zone === 'body' && pot.facts.shape.bellyMm === undefined ? halfway : outside[zone]
}

/** Where to touch these pots; pots are named where their places differ. */
export function touchWhere(words: Words, table: Table, pots: readonly PotState[]): string {
  const places = new Map<string, string[]>()
  for (const pot of pots) {
    const place = placeToTouch(table, pot)
    if (place !== undefined) places.set(place, [...(places.get(place) ?? []), String(nameOf(words, pot))])
  }
  if (places.size === 0) return ''
  const { touchAt, touchEach } = words.bench
  const said = [...places].map(([place, of]) => (places.size === 1 ? place : touchEach(of.join(', '), place)))
  return touchAt(said.join('; '))
}
