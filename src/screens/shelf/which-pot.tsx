import { useState } from 'preact/hooks'
import { drawingOf } from '../../table/forecast/drawing.ts'
import { levelsOf, potsIn } from '../../table/load/loads.ts'
import { type MatchAnswer, matchPiece, notFound, type SeenPiece } from '../../table/load/match.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { Choice } from '../../ui/choice.tsx'
import { PotOutline } from '../../ui/outline.tsx'
import { KILN_CARE_WORDS } from '../../words/kiln-care.ts'
import { WHICH_WORDS } from '../../words/which.ts'
import { BackLine } from '../desk/back-line.tsx'
import { EntryField, useEntry } from '../desk/entry-field.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { kilnRefusalText, thingName, useLoad } from './load-app.ts'

const DRAWN_PX = { width: 100, height: 120 }

/** A pot out of the fire without a number: told by its shelf, size and glaze, then judged. Nothing is taken for it untapped. */
export function WhichPot({ load }: { readonly load: LoadState }) {
  const { table, words, formats, act, go } = useLoad()
  const care = KILN_CARE_WORDS[table.value.settings.language]
  const which = WHICH_WORDS[table.value.settings.language]
  const [shelf, setShelf] = useState<string>()
  const [stackId, setStack] = useState<string>()
  const [told, setTold] = useState<{ readonly seen: SeenPiece; readonly answer: MatchAnswer }>()
  const [said, setSaid] = useState<string>()
  const high = useEntry('heightMm', undefined, true)
  const wide = useEntry('bellyMm', undefined, true)
  const name = (key: string) => thingName(words.value, table.value, key)
  const left = notFound(table.value, load)
  const found = Object.keys(load.matched ?? {})
  const levels = levelsOf(load)
  const stacks = [...new Set(potsIn(table.value, load).map(({ facts }) => facts.stackId))]
  useBar(() => {
    if (told) return setTold(undefined)
    if (left.length === 0 || ![high, wide].map((entry) => entry.check()).every(Boolean)) return
    const seen: SeenPiece = {
      ...(high.value === undefined ? {} : { heightMm: high.value }),
      ...(wide.value === undefined ? {} : { widthMm: wide.value }),
      ...(shelf === undefined ? {} : { place: shelf }),
      ...(stackId === undefined ? {} : { stackId }),
    }
    if (Object.keys(seen).length === 0) return setSaid(which.nothing)
    setSaid(undefined)
    setTold({ seen, answer: matchPiece(table.peek(), load, seen) })
  })
  const take = (potId: string, sureness: number) => {
    const { heightMm, widthMm } = told?.seen ?? {}
    const sizes = {
      ...(heightMm === undefined ? {} : { heightMm }),
      ...(widthMm === undefined ? {} : { widthMm }),
    }
    const refusal = act({ do: 'match', loadId: load.loadId, potId, sureness, ...sizes })
    if (refusal) setSaid(kilnRefusalText(words.value, formats.value, table.peek(), refusal))
    else go({ at: 'judge', potId })
  }
  const place = (potId: string) => {
    const pot = table.value.pots[potId]
    return load.things[potId]?.place ?? load.things[pot?.facts.lidOf ?? '']?.place ?? ''
  }
  return (
    <>
      <KilnMain>
        <Alarm said={said} />
        {left.length === 0 ? <p class="kiln-big">{which.none}</p> : null}
        {told ? (
          <>
            <p>{told.answer.sure ? which.sole : which.which}</p>
            <div class="which-pots">
              {told.answer.options.map(({ potId, sureness }) => {
                const pot = table.value.pots[potId]
                return pot ? (
                  <button
                    key={potId}
                    type="button"
                    class="key which-pot"
                    onClick={() => take(potId, sureness)}
                  >
                    <PotOutline {...drawingOf(table.value, pot, 'as-is')} {...DRAWN_PX} label={name(potId)} />
                    <strong class="figures">{name(potId)}</strong>
                    <small class="figures">
                      {place(potId)} {which.sure(`${Math.min(99, Math.round(100 * sureness))} %`)}
                    </small>
                  </button>
                ) : null
              })}
            </div>
          </>
        ) : left.length > 0 ? (
          <>
            {levels.length > 1 ? (
              <Choice
                label={which.shelf}
                options={levels.map(({ number }) => ({ value: `${number}`, label: `${number}` }))}
                value={shelf}
                onChoose={(value) => setShelf(value === shelf ? undefined : value)}
              />
            ) : null}
            <div class="pair">
              <EntryField entry={high} label={which.high} />
              <EntryField entry={wide} label={which.wide} />
            </div>
            {stacks.length > 1 ? (
              <Choice
                label={which.stack}
                options={stacks.map((value) => ({ value, label: table.value.stacks[value]?.name ?? value }))}
                value={stackId}
                onChoose={(value) => setStack(value === stackId ? undefined : value)}
              />
            ) : null}
          </>
        ) : null}
        {found.length > 0 ? <p class="figures">{which.found(found.map(name).join(', '))}</p> : null}
        <p class="caution">{care.open}</p>
      </KilnMain>
      <BackLine />
      <KnuckleBar label={told ? which.other : which.bar} />
    </>
  )
}
