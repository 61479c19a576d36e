import { proposeLoad } from '../../../src/engine/kiln/propose.ts'
import { KILN_SIZES, type KilnOffer } from '../../../src/table/load/kiln-sizes.ts'
import { levelsOf } from '../../../src/table/load/loads.ts'
import { loadInput } from '../../../src/table/load/proposal.ts'
import { glazed } from '../../fixtures/glazed.ts'
import { Play, START_MS } from './play.ts'
import '../../../src/table/forecast/walls.ts'

export const FIRING = { cone: '6', make: 'american', riseCPerH: 60, holdMin: 0 } as const

/** Glazed pots, the last coat so many `hours` ago, a kiln, and a load begun. */
export function begun(times = 1, offer: KilnOffer = 'round', hours?: number): Play {
  const play = new Play()
  for (const [i, hit] of glazed(START_MS, times, hours).entries()) play.append(hit, `g${i}`)
  play.act({ do: 'set-kiln', kiln: KILN_SIZES[offer] })
  const [kilnId = ''] = Object.keys(play.table.kilns ?? {})
  return play.act({ do: 'begin-load', kilnId, firing: FIRING })
}
export const loadOf = (play: Play) => {
  const load = Object.values(play.table.loads ?? {}).at(-1)
  if (!load) throw new Error('no load')
  return load
}
export const planOf = (play: Play) => proposeLoad(loadInput(play.table, loadOf(play), play.nowMs))
export function proposed(times = 1, offer: KilnOffer = 'round'): Play {
  const play = begun(times, offer)
  return play.act({ do: 'lay-out', loadId: loadOf(play).loadId, plan: planOf(play) })
}
export function loaded(): Play {
  const play = proposed()
  for (const { column, storey } of levelsOf(loadOf(play)))
    play.act({ do: 'load-shelf', loadId: loadOf(play).loadId, column, storey })
  return play
}
export function lit(): Play {
  const play = loaded()
  const { loadId } = loadOf(play)
  return play.act({ do: 'shut-lid', loadId }).act({ do: 'light', loadId })
}
