import { useState } from 'preact/hooks'
import type { KilnFacts } from '../../../shared/load.ts'
import { KILN_OFFERS, KILN_SIZES, type KilnOffer } from '../../table/load/kiln-sizes.ts'
import { isSameKiln } from '../../table/load/same-kiln.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { Choice } from '../../ui/choice.tsx'
import { KILN_FORM_WORDS } from '../../words/kiln-form.ts'
import { EntryField, refusalBeside, useEntry } from '../desk/entry-field.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { lazyPart } from '../lazy.tsx'
import { kilnRefusalText, useLoad } from './load-app.ts'

const LevelDrawing = lazyPart(() => import('../../ui/level-drawing.tsx').then((part) => part.LevelDrawing))

const OffsetTaken = lazyPart(() => import('./offset-taken.tsx').then((part) => part.OffsetTaken))

interface FormProps {
  readonly kiln: KilnFacts | undefined
  readonly done: () => void
}

type Facts = Omit<KilnFacts, 'kilnId'>
type KilnToSet = Facts & { readonly kilnId?: string }

/** Which kiln it is: asked once, from this table's own and from usual sizes, every measure to be changed. */
export function KilnForm({ kiln, done }: FormProps) {
  const { table, formats } = useLoad()
  const w = KILN_FORM_WORDS[table.value.settings.language]
  const own = Object.values(table.value.kilns ?? {}).toReversed()
  const [chosen, choose] = useState<string>(kiln?.kilnId ?? KILN_OFFERS[0] ?? '')
  const mine = own.find(({ kilnId }) => kilnId === chosen)
  const facts = mine ?? KILN_SIZES[chosen as KilnOffer]
  const mm = formats.value.mm
  const sizeOf = ({ chamber }: KilnFacts) =>
    w.mine(
      w[chamber.kind],
      mm(chamber.kind === 'round' ? chamber.diameterMm : chamber.widthMm),
      mm(chamber.heightMm),
    )
  const stockOf = ({ shelves }: KilnFacts) =>
    shelves.map((shelf) => `${w.shelves[shelf.kind](shelf.count)} ${mm(shelf.widthMm)}`).join(', ')
  /** Those of one size are told by their shelves, and where these are alike by which was set first. */
  const label = (each: KilnFacts) => {
    const alike = own.filter((other) => sizeOf(other) === sizeOf(each))
    const same = alike.filter((other) => stockOf(other) === stockOf(each))
    return (
      <>
        {sizeOf(each)}
        {same.length > 1 ? ` · ${same.length - same.indexOf(each)}` : null}
        {alike.length > 1 ? <small> {stockOf(each)}</small> : null}
        {each.kilnId === kiln?.kilnId ? <small> {w.inUse}</small> : null}
      </>
    )
  }
  const others = KILN_OFFERS.filter((offer) => !own.some((each) => isSameKiln(each, KILN_SIZES[offer])))
  return (
    <Measures key={chosen} facts={facts} kilnId={mine?.kilnId} done={done}>
      <Choice
        label={w.title}
        options={[
          ...own.map((each) => ({ value: each.kilnId, label: label(each) })),
          ...others.map((offer) => ({ value: offer as string, label: w.offers[offer] })),
        ]}
        value={chosen}
        help={w.text}
        onChoose={choose}
      />
    </Measures>
  )
}

interface MeasuresProps {
  readonly facts: Facts
  readonly kilnId: string | undefined
  readonly done: () => void
  readonly children: preact.ComponentChildren
}

function Measures({ facts, kilnId, done, children }: MeasuresProps) {
  const { table, words, formats, act } = useLoad()
  const w = words.value.desk.shelf
  const form = KILN_FORM_WORDS[table.value.settings.language]
  const [said, setSaid] = useState<string>()
  const [opened, setOpened] = useState(false)
  const [asked, setAsked] = useState<KilnToSet>()
  const { chamber } = facts
  const shelf = facts.shelves[0]
  const round = chamber.kind === 'round'
  const wide = useEntry('chamberMm', round ? chamber.diameterMm : chamber.widthMm)
  const deep = useEntry('chamberMm', round ? chamber.diameterMm : chamber.depthMm)
  const high = useEntry('chamberMm', chamber.heightMm)
  const across = useEntry('shelfMm', shelf?.widthMm)
  const back = useEntry('shelfMm', shelf?.depthMm)
  const thick = useEntry('shelfThickMm', shelf?.thickMm)
  const count = useEntry('shelfCount', shelf?.count)
  const spy = useEntry('upMm', facts.spyHoles[0]?.upMm, true)
  const couple = useEntry('upMm', facts.couple?.upMm, true)
  const posts = facts.posts.map((post) => ({ post, entry: useEntry('postCount', post.count, true) }))
  const flat = shelf?.kind === 'round' || shelf?.kind === 'halfRound'
  const all = [wide, deep, high, across, back, thick, count, spy, couple, ...posts.map(({ entry }) => entry)]
  const read = (): Facts | undefined => {
    const right = all.map((entry) => entry.check()).every(Boolean)
    const values = [wide, deep, high, across, back, thick, count].map(({ value }) => value)
    const [widthMm, depthMm, heightMm, shelfMm, backMm, thickMm, many] = values
    if (!right || !shelf || values.some((value) => value === undefined)) return undefined
    const size = { widthMm: shelfMm ?? 0, depthMm: (flat ? shelfMm : backMm) ?? 0, thickMm: thickMm ?? 0 }
    return {
      chamber: round
        ? { kind: 'round', diameterMm: widthMm ?? 0, heightMm: heightMm ?? 0 }
        : { ...chamber, widthMm: widthMm ?? 0, depthMm: depthMm ?? 0, heightMm: heightMm ?? 0 },
      shelves: [{ ...shelf, ...size, count: many ?? 0 }, ...facts.shelves.slice(1)],
      posts: posts.flatMap(({ post, entry }) =>
        entry.value === undefined ? [] : [{ lengthMm: post.lengthMm, count: entry.value }],
      ),
      spyHoles:
        spy.value === undefined ? [] : [{ angleDeg: facts.spyHoles[0]?.angleDeg ?? 0, upMm: spy.value }],
      ...(couple.value === undefined
        ? {}
        : { couple: { angleDeg: 180, reachMm: 30, ...facts.couple, upMm: couple.value } }),
    }
  }
  useBar((atMs) => {
    const next = read()
    if (!next) return setOpened(true)
    set({ ...next, ...(kilnId === undefined ? {} : { kilnId }) }, false, atMs)
  })
  const set = (kiln: KilnToSet, sure: boolean, atMs?: number) => {
    const refusal = act({ do: 'set-kiln', kiln, sure }, atMs)
    if (!refusal) return done()
    const isAsked = refusal.field === 'other-kiln'
    setAsked(isAsked ? kiln : undefined)
    setOpened(!isAsked)
    if (!refusalBeside(words.value, refusal, all))
      setSaid(kilnRefusalText(words.value, formats.value, table.peek(), refusal))
  }
  const [widthMm, depthMm] = [wide.value ?? 100, (round ? wide.value : deep.value) ?? 100]
  const sides =
    shelf?.kind === 'halfRound' || shelf?.kind === 'halfBox'
      ? (['left', 'right'] as const)
      : (['whole'] as const)
  return (
    <>
      <KilnMain>
        <Alarm said={said} />
        {asked ? (
          <button type="button" class="key" onClick={() => set(asked, true)}>
            {form.sure}
          </button>
        ) : null}
        {children}
        {kilnId === undefined ? null : <OffsetTaken kilnId={kilnId} />}
        {opened ? (
          <div class="fields">
            <EntryField entry={wide} label={round ? form.across : form.wide} />
            {round ? null : <EntryField entry={deep} label={form.deep} />}
            <EntryField entry={high} label={form.high} />
            <EntryField entry={across} label={form.shelfAcross} />
            {flat ? null : <EntryField entry={back} label={form.shelfDeep} />}
            <EntryField entry={thick} label={form.thick} />
            <EntryField entry={count} label={form.count} />
            {posts.map(({ post, entry }) => (
              <EntryField
                key={post.lengthMm}
                entry={entry}
                label={form.posts(formats.value.mm(post.lengthMm))}
              />
            ))}
            <EntryField entry={spy} label={form.spy} />
            <EntryField entry={couple} label={form.couple} />
          </div>
        ) : (
          <button type="button" class="key" onClick={() => setOpened(true)}>
            {form.edit}
          </button>
        )}
        {opened || !shelf ? null : (
          <div class="kiln-drawn is-small">
            <LevelDrawing
              round={round}
              widthMm={widthMm}
              depthMm={depthMm}
              shelves={sides.map((side) => ({
                ...shelf,
                side,
                widthMm: across.value ?? 0,
                depthMm: (flat ? across.value : back.value) ?? 0,
              }))}
              posts={[]}
              things={[]}
              label={form.offers.round}
              front={w.front}
            />
          </div>
        )}
      </KilnMain>
      <KnuckleBar label={form.take} />
    </>
  )
}
