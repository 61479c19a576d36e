import type { TableEvent } from '../../shared/events.ts'
import { isBy } from '../../shared/record.ts'
import { heardKeys } from '../device/heard.ts'
import type { Journal } from '../store/index.ts'
import { seenFrom } from '../table/fold/seen.ts'
import { asksOf, twinsOf } from '../table/meeting/asks.ts'
import type { Ask } from '../table/model/ask.ts'
import type { Table } from '../table/model/state.ts'

/** What is to be settled of what phones brought. */
export const asksNow = (journal: Journal<TableEvent>, table: Table): readonly Ask[] =>
  journal.records.every(isBy(journal.phone))
    ? twinsOf(table)
    : asksOf(table, seenFrom(journal.records, journal.phone), heardKeys())
