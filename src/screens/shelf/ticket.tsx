import { profileOf } from '../../table/forecast/shape-inputs.ts'
import { levelView } from '../../table/load/level-view.ts'
import { levelsOf } from '../../table/load/loads.ts'
import { type LevelState, type LoadState, levelKey } from '../../table/model/load-state.ts'
import { LevelDrawing } from '../../ui/level-drawing.tsx'
import { PotOutline } from '../../ui/outline.tsx'
import { KILN_CARE_WORDS } from '../../words/kiln-care.ts'
import { KILN_PAGE_WORDS } from '../../words/kiln-pages.ts'
import { tagOf } from '../../words/languages.ts'
import { useCalendar } from '../days.ts'
import { DeskSave } from '../desk/save.tsx'
import { thingName, useLoad } from './load-app.ts'

/** Shrinkage that is told of a load nobody has measured: bisque to a glaze fire. Common practice, no source. */
const SHRINKS = { least: 0.03, most: 0.07 }
const OUTLINE_PX = 44

/** The load on paper: each shelf from above to scale, its posts, and the pots by their places. Black and white. */
export function Ticket({ load }: { readonly load: LoadState; readonly close: () => void }) {
  const { table, words } = useLoad()
  const w = words.value.desk.shelf
  const care = KILN_CARE_WORDS[table.value.settings.language]
  const pages = KILN_PAGE_WORDS[table.value.settings.language]
  // Paper is read on another day: its day is told by date.
  const calendar = useCalendar()
  const begunMs = load.begunAt + table.value.skewMs
  return (
    <>
      <main class="desk-main-part ticket-pages">
        {calendar ? (
          <p class="figures">
            <strong>
              {pages.map.of(
                calendar.dateText(words.value.days, tagOf(table.value.settings.language), begunMs),
                load.firing.cone,
              )}
            </strong>
          </p>
        ) : null}
        <p class="figures">{pages.map.key}</p>
        {levelsOf(load).map((level) => (
          <TicketLevel key={levelKey(level)} load={load} level={level} />
        ))}
        <p>{pages.map.shrinks}</p>
        <p>{care.open}</p>
      </main>
      <DeskSave said={undefined} save={() => window.print()} label={w.print} />
    </>
  )
}

function TicketLevel({ load, level }: { readonly load: LoadState; readonly level: LevelState }) {
  const { table, words, formats } = useLoad()
  const w = words.value.desk.shelf
  const pages = KILN_PAGE_WORDS[table.value.settings.language]
  const view = levelView(table.value, load, level)
  if (!view) return null
  const { chamber } = load.kiln
  const [widthMm, depthMm] =
    chamber.kind === 'round' ? [chamber.diameterMm, chamber.diameterMm] : [chamber.widthMm, chamber.depthMm]
  const name = (key: string) => thingName(words.value, table.value, key)
  const postMm = level.postMm.reduce((sum, one) => sum + one, 0)
  const after = (mm: number) =>
    words.value.desk.range(
      `${Math.round(mm * (1 - SHRINKS.most))}`,
      `${Math.round(mm * (1 - SHRINKS.least))}`,
    )
  const nth = ({ place = '' }: { readonly place?: string }) => Number(place.split('.')[1])
  const rows = view.things.filter(({ place }) => place !== undefined).toSorted((a, b) => nth(a) - nth(b))
  return (
    <section class="ticket-level">
      <h2>
        {postMm > 0 ? pages.map.posts(level.number, formats.value.mm(postMm)) : pages.map.top(level.number)}
      </h2>
      <LevelDrawing
        round={chamber.kind === 'round'}
        widthMm={widthMm}
        depthMm={depthMm}
        shelves={[{ ...view.shelf, side: level.column }]}
        posts={postMm > 0 ? level.posts : []}
        things={view.things.map((one) => ({
          ...one,
          kind: one.what,
          label:
            one.what === 'pot' ? `${name(one.key)}${one.onSlab ? 's' : ''}` : one.what === 'tile' ? 'T' : 'C',
        }))}
        label={w.drawn(level.number, view.things.map(({ key }) => name(key)).join(', '))}
        front={w.front}
      />
      <table class="figures">
        <thead>
          <tr>
            <th>{pages.map.place}</th>
            <th>{pages.map.pot}</th>
            <th />
            <th>{pages.map.size}</th>
            <th>{pages.map.after}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((one) => {
            const facts = one.potId === undefined ? undefined : table.value.pots[one.potId]?.facts
            const [high, wide] = [Math.round(one.heightMm), Math.round(2 * one.bellyRadiusMm)]
            return (
              <tr key={one.key}>
                <td>
                  <strong>{one.place}</strong>
                </td>
                <td>{name(one.key)}</td>
                <td>
                  {facts ? (
                    <PotOutline
                      outer={profileOf(facts).outer}
                      footLineMm={facts.shape.footLineMm}
                      bands={[]}
                      width={OUTLINE_PX}
                      height={OUTLINE_PX}
                      label={name(one.key)}
                    />
                  ) : null}
                </td>
                <td>
                  {high} × {wide}
                </td>
                <td>{facts ? `${after(high)} × ${after(wide)}` : ''}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </section>
  )
}
