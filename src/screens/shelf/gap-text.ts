import { type Gap, TOUCH_MM } from '../../table/load/level-view.ts'
import type { Table } from '../../table/model/state.ts'
import type { DeskWords } from '../../words/desk.ts'
import type { Formats } from '../../words/format.ts'
import { thingName } from './load-app.ts'

/** Two neighbours that stand too near to each other, or in each other. */
export function gapText(words: DeskWords, formats: Formats, table: Table, { a, b, mm }: Gap): string {
  const w = words.desk.shelf
  const [one, other] = [thingName(words, table, a.key), b ? thingName(words, table, b.key) : w.post]
  return Math.abs(mm) < TOUCH_MM
    ? w.touch(one, other)
    : (mm > 0 ? w.apart : w.overlap)(one, other, formats.mm(Math.abs(mm)))
}
