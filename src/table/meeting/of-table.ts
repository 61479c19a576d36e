/** What phones that met changed of all that is the table's: its settings, the board's clay, the firing to come, kilns, pairs. */

import type { TableEvent } from '../../../shared/events.ts'
import type { Settings } from '../../../shared/nouns.ts'
import { knew } from '../fold/knew.ts'
import type { Meeting } from '../fold/seen.ts'
import type { Ask, Heard, ThingFacts } from '../model/ask.ts'
import { DEFAULT_BOARD, DEFAULT_SETTINGS } from '../model/defaults.ts'
import { pairKey } from '../model/pair-key.ts'
import { isSame } from '../model/same.ts'
import type { Table } from '../model/state.ts'
import { ofTable } from '../model/whose-setting.ts'
import { open, type Placed, type SaidEvent } from './said.ts'

type Thing = Extract<ThingFacts, { is: 'settings' | 'board' | 'firing' | 'kiln' | 'pair' }>
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
    case 'kiln-set':
      return [[`kiln ${event.kiln.kilnId}`, { is: 'kiln', facts: event.kiln }]]
    case 'pair-set':
      return [[`pair ${pairKey(event.pair)}`, { is: 'pair', facts: event.pair }]]
    default:
      return []
  }
}

const isSetting = (name: string): name is keyof Settings => Object.hasOwn(DEFAULT_SETTINGS, name)

/** How a thing is where nobody at this phone said how; undefined where it is not at all. */
function unsaid(name: string): Thing | undefined {
  if (name === 'board') return { is: 'board', facts: DEFAULT_BOARD }
  return isSetting(name) ? { is: 'settings', facts: { [name]: DEFAULT_SETTINGS[name] } } : undefined
}

function standing(table: Table, { is, facts }: Thing): unknown {
  switch (is) {
    case 'board':
    case 'firing':
      return table[is]
    case 'kiln':
      return table.kilns?.[facts.kilnId]
    case 'pair':
      return table.pairs[pairKey(facts)]
    case 'settings':
      return Object.fromEntries(
        Object.keys(facts).map((name) => [name, table.settings[name as keyof Settings]]),
      )
  }
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
    // All but its settings is gone with a table, as far as it was read.
    if (event.kind === 'table-cleared' && said.from === undefined) {
      for (const name of own.keys()) if (!isSetting(name)) own.delete(name)
      for (const [name, ways] of words) {
        if (isSetting(name)) continue
        for (const [from, way] of ways) if (!event.read || knew(met, said, way)) ways.delete(from)
      }
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
    if (isSame(before?.facts, one.facts) || !isSame(standing(table, one), one.facts)) continue
    // A kiln or a pair that nobody here had is no change of anything here.
    if (!before && one.is !== 'firing') continue
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
