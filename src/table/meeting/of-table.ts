/** What phones that met changed of all that is the table's: its settings, the board's clay, the firing to come. */

import type { TableEvent } from '../../../shared/events.ts'
import type { Settings } from '../../../shared/nouns.ts'
import { knew } from '../fold/knew.ts'
import type { Meeting } from '../fold/seen.ts'
import type { Ask, Heard, ThingFacts } from '../model/ask.ts'
import { DEFAULT_BOARD, DEFAULT_SETTINGS } from '../model/defaults.ts'
import { isSame } from '../model/same.ts'
import type { Table } from '../model/state.ts'
import { ofTable } from '../model/whose-setting.ts'
import { open, type Placed, type SaidEvent } from './said.ts'

type Thing = Extract<ThingFacts, { is: 'settings' | 'board' | 'firing' }>
type Way = Thing & Placed

/** Each thing that an event says, by its name. */
function thingsOf(event: TableEvent): readonly (readonly [string, Thing])[] {
  switch (event.kind) {
    case 'settings-set':
      return Object.entries(ofTable(event.settings)).map(([name, value]) => [
        name,
        { is: 'settings', facts: { [name]: value } },
      ])
    case 'board-set':
      return [['board', { is: 'board', facts: event.board }]]
    case 'firing-planned':
      return [['firing', { is: 'firing', facts: event.firing }]]
    default:
      return []
  }
}

/** How a thing is where nobody at this phone said how. */
function unsaid(name: string): Thing | undefined {
  if (name === 'firing') return undefined
  if (name === 'board') return { is: 'board', facts: DEFAULT_BOARD }
  return { is: 'settings', facts: { [name]: DEFAULT_SETTINGS[name as keyof Settings] } }
}

function standing(table: Table, name: string): unknown {
  if (name === 'firing') return table.firing
  return name === 'board' ? table.board : { [name]: table.settings[name as keyof Settings] }
}

/**
 * What two or more changed, none knowing of another, is asked. What others alone changed, otherwise than this phone had it,
 * is heard.
 */
export function ofTheTable(
  table: Table,
  events: readonly SaidEvent[],
  met: readonly Meeting[],
): { readonly asks: readonly Ask[]; readonly heard: readonly Heard[] } {
  const words = new Map<string, Map<string | undefined, Way>>()
  const own = new Map<string, { readonly thing: Thing; readonly order: number }>()
  for (const [event, said] of events) {
    // Its clay and its firing are gone with a table, its settings stay.
    if (event.kind === 'table-cleared' && said.from === undefined)
      for (const name of ['board', 'firing']) {
        own.delete(name)
        const ways = words.get(name) ?? new Map<string | undefined, Way>()
        for (const [from, way] of ways) if (!event.read || knew(met, said, way)) ways.delete(from)
      }
    for (const [name, thing] of thingsOf(event)) {
      if (said.from === undefined) own.set(name, { thing, order: said.order })
      if (event.handed || event.anew) continue
      const ways = words.get(name) ?? new Map<string | undefined, Way>()
      words.set(name, ways.set(said.from, { ...thing, ...said }))
    }
  }
  const asks: Ask[] = []
  const heard: Heard[] = []
  for (const [name, ways] of words) {
    const said = open(met, [...ways.values()])
    const differ = said.filter((way, i) => said.findIndex(({ facts }) => isSame(facts, way.facts)) === i)
    const [one] = differ
    if (!one) continue
    if (differ.length > 1) {
      asks.push({ is: 'changed', ways: differ })
      continue
    }
    const mine = own.get(name)
    const before = mine?.thing ?? unsaid(name)
    // What was set anew since, by a table that was cleared, is no longer what they said.
    if (isSame(before?.facts, one.facts) || !isSame(standing(table, name), one.facts)) continue
    const { from, at, order: _order, ...thing } = one
    heard.push({
      at,
      ...(from === undefined ? {} : { from }),
      thing,
      ...(before ? { before } : {}),
      key: JSON.stringify([name, mine?.order ?? 0, one.facts]),
    })
  }
  return { asks, heard }
}
