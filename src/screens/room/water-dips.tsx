import { thirstOf, timesAssumed } from '../../table/forecast/readings.ts'
import { More } from '../../ui/more.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, useEntry } from '../desk/entry-field.tsx'

/** Seconds of the two dips as usually made. Assumption. */
const USUAL_S = { first: 10, second: 60 } as const
/** Face of a test tile, cm2. Assumption. */
const USUAL_CM2 = 50

/** How fast the clay drinks, from one tile weighed after two dips in water: what clings cancels. */
export function WaterDips() {
  const { table, words, act } = useDesk()
  const w = words.value.desk.measured.clay
  const { board } = table.value
  const area = useEntry('areaCm2', USUAL_CM2)
  const firstS = useEntry('tileS', USUAL_S.first)
  const firstG = useEntry('tileG', undefined, true)
  const secondS = useEntry('tileS', USUAL_S.second)
  const secondG = useEntry('tileG', undefined, true)
  const [cm2, s1, g1, s2, g2] = [area, firstS, firstG, secondS, secondG].map(({ value }) => value)
  const all =
    cm2 !== undefined && s1 !== undefined && g1 !== undefined && s2 !== undefined && g2 !== undefined
  const found = all ? thirstOf({ seconds: s1, gainG: g1 }, { seconds: s2, gainG: g2 }, cm2) : undefined
  const now = board.sorptivityMmPerSqrtS
  const times = (s: number) => timesAssumed(s, board.absorption)
  const set = (sorptivityMmPerSqrtS: number | undefined) => {
    const { sorptivityMmPerSqrtS: _before, ...rest } = board
    const one = sorptivityMmPerSqrtS === undefined ? {} : { sorptivityMmPerSqrtS }
    act({ do: 'set-board', board: { ...rest, ...one } })
  }
  return (
    <>
      {now === undefined ? null : (
        <div class="taken">
          <strong class="figures">{w.drinks(times(now))}</strong>
          <button type="button" class="key" onClick={() => set(undefined)}>
            {words.value.desk.measured.air.forget}
          </button>
        </div>
      )}
      <More label={w.dips}>
        <p class="help">{w.help}</p>
        <div class="fields">
          <EntryField entry={area} label={w.area} />
          <span />
          <EntryField entry={firstS} label={w.firstS} />
          <EntryField entry={firstG} label={w.firstG} />
          <EntryField entry={secondS} label={w.secondS} />
          <EntryField entry={secondG} label={w.secondG} />
        </div>
        {all && found === undefined ? <p class="alarm">{w.wrong}</p> : null}
        {found !== undefined ? (
          <div class="taken">
            <strong class="figures">{w.drinks(times(found))}</strong>
            <button type="button" class="key" onClick={() => set(found)}>
              {words.value.desk.measured.air.take}
            </button>
          </div>
        ) : null}
      </More>
    </>
  )
}
