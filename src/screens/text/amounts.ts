import type { AirFacts, Place } from '../../../shared/nouns.ts'
import type { TileOfPot } from '../../table/card/board-view.ts'
import { showEntry, unitLabel } from '../../table/entry/entry.ts'
import type { Units } from '../../table/entry/measure.ts'
import type { LimitedField } from '../../table/model/limits.ts'
import type { DeskWords } from '../../words/desk.ts'
import type { Formats } from '../../words/format.ts'
import { decimal, marked } from '../../words/number.ts'

export const placeText = (place: Place): string => `${place.board} ${place.spot}`

/** A stored number with its unit, as a person would type it. */
export const amount = (field: LimitedField, value: number, units: Units): string =>
  [marked(showEntry(field, value, units)), unitLabel(field, units)].filter(Boolean).join(' ')

export const airText = (words: DeskWords, air: AirFacts, units: Units): string =>
  words.desk.board.air(
    amount('tempC', air.tempC, units),
    amount('rh', air.rh, units),
    words.why.draughts[air.draught],
  )

/** What a tile says; `nowMs` is table time. */
export function tileText(
  words: DeskWords,
  formats: Formats,
  state: TileOfPot['state'],
  nowMs: number,
): string {
  const w = words.desk.board.state
  switch (state.is) {
    case 'wait':
      return Number.isFinite(state.untilMs) ? formats.span(Math.max(1000, state.untilMs - nowMs)) : w.never
    case 'kiln':
      if (!Number.isFinite(state.dryMs)) return w.never
      if (state.dryMs <= nowMs) return words.desk.board.kiln.dry
      return formats.spanBetween(state.dryMs - nowMs, state.dryByMs - nowMs)
    default:
      return w[state.is]
  }
}

const KG_PER_POUND = 0.45359237

/** Water to pour: to the tenth of a litre, or in the small pours' own unit. */
export const bulk = (formats: Formats, litres: number, units: Units): string =>
  litres >= 1 && units === 'metric'
    ? amount('litres', Math.round(litres * 10) / 10, units)
    : formats.pour(litres)

/** Dry mix to weigh out. */
export const weight = (kg: number, units: Units): string =>
  units === 'us'
    ? `${decimal(kg / KG_PER_POUND, 1)} lb`
    : kg >= 1
      ? `${decimal(kg, 1)} kg`
      : `${Math.round(kg * 100) * 10} g`
