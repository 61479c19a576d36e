import { useState } from 'preact/hooks'
import type { ShapeFacts } from '../../../shared/nouns.ts'
import { withGallery } from '../../table/advice/lid.ts'
import { FORMS, hasBelly, mayPour, nextPot, outerOf, readPlace, stepShape } from '../../table/entry/offer.ts'
import { otherPiece } from '../../table/model/pieces.ts'
import type { PotState } from '../../table/model/state.ts'
import { Choice, Switch } from '../../ui/choice.tsx'
import { Field } from '../../ui/field.tsx'
import { PotGlyph } from '../../ui/glyph.tsx'
import { PotOutline } from '../../ui/outline.tsx'
import { refusalText } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, refusalBeside, type Typed, useEntry } from '../desk/entry-field.tsx'
import { DeskHead } from '../desk/head.tsx'
import { DeskSave } from '../desk/save.tsx'
import { lazyPart } from '../lazy.tsx'
import { placeText } from '../text/amounts.ts'
import { nameOf } from '../text/pot-text.ts'
import { useAddWords } from './add-words.ts'
import { Bisque, type OwnBisque } from './bisque.tsx'
import { StackChoice } from './stack-choice.tsx'

/** Fetched when it is asked for: few pots are measured by a photo. */
const PhotoOutline = lazyPart(() => import('./photo-outline.tsx').then((part) => part.PhotoOutline))

interface PotFormProps {
  /** The pot to be changed; without it a new one. */
  readonly pot?: PotState
  readonly stackId: string
  readonly back: () => void
}

/** Measures of a pot by hand. The outline follows every digit; nothing is stored until all of it is right. */
export function PotForm({ pot, stackId, back }: PotFormProps) {
  const { table, words, formats, act } = useDesk()
  const { board } = table.value
  const w = words.value.desk.pot
  const adding = useAddWords()
  const [{ number, place }] = useState(() => pot?.facts ?? nextPot(table.peek()))
  const [base, setBase] = useState<ShapeFacts>(() => pot?.facts.shape ?? stepShape(board, 'beaker', 'medium'))
  const [stack, setStack] = useState(stackId)
  const [bisque, setBisque] = useState<OwnBisque>(() => ownBisque(pot?.facts))
  const other = pot && otherPiece(table.value, pot.facts)
  const [lid, setLid] = useState(false)
  const [pour, setPour] = useState(pot?.facts.pourInsideFirst ?? false)
  const [at, setAt] = useState<Typed>({ text: placeText(place) })
  const [said, setSaid] = useState<string>()
  const [photo, setPhoto] = useState(false)

  // What was read off a photo is changed as a whole.
  const read = base.outsideMm !== undefined
  const bellied = hasBelly(base.form) || read
  const isLid = base.form === 'lid'
  const isStraight = isLid || base.form === 'cylinder'
  const lidded = base.form === 'jar' && (lid || other !== undefined)
  const height = useEntry('heightMm', base.heightMm)
  const rim = useEntry('rimMm', base.rimMm)
  const belly = useEntry('bellyMm', base.bellyMm, true)
  const foot = useEntry('footMm', base.footMm, true)
  const wall = useEntry('wallMm', base.wallMm)
  const footLine = useEntry('footLineMm', base.footLineMm)
  const numbered = useEntry('number', number)
  const gallery = useEntry('galleryMm', withGallery(base).galleryMm)
  const absorption = useEntry('absorption', pot?.facts.absorption, true)
  const entries = [
    ...(isLid ? [] : [numbered]),
    ...(read ? [] : [height, rim, ...(bellied ? [belly] : []), ...(isStraight ? [] : [foot])]),
    wall,
    footLine,
    ...(lidded ? [gallery] : []),
    absorption,
  ]
  const shape = shapeOf(base, {
    heightMm: height.value,
    rimMm: rim.value,
    bellyMm: bellied ? belly.value : undefined,
    footMm: isStraight && !read ? rim.value : foot.value,
    wallMm: wall.value,
    footLineMm: footLine.value,
    galleryMm: lidded ? gallery.value : undefined,
  })
  const outer = outerOf(shape)

  const save = () => {
    const here = readPlace(at.text)
    const right = entries.map((entry) => entry.check()).every(Boolean)
    if (!here) setAt({ ...at, wrong: words.value.desk.wrong.place })
    if (!right || !here) return
    if (!outer) return setSaid(w.contradict)
    const refusal = act({
      do: 'set-pot',
      pot: {
        ...(pot ? { potId: pot.facts.potId } : {}),
        number: numbered.value ?? number,
        place: here,
        shape,
        stackId: stack,
        ...(absorption.value === undefined ? {} : { absorption: absorption.value }),
        ...bisque,
        ...(pot?.facts.lidOf === undefined ? {} : { lidOf: pot.facts.lidOf }),
        ...(pot?.facts.whose === undefined ? {} : { whose: pot.facts.whose }),
        ...(pour && mayPour(base.form) ? { pourInsideFirst: true } : {}),
      },
      ...(lidded && !other ? { lid: { stackId: stack } } : {}),
    })
    if (!refusal) return back()
    if (refusal.field === 'place') setAt({ ...at, wrong: refusalText(words.value, refusal) })
    else if (!refusalBeside(words.value, refusal, entries)) setSaid(refusalText(words.value, refusal))
  }

  if (photo)
    return (
      <PhotoOutline
        base={shape}
        back={() => setPhoto(false)}
        keep={(found) => {
          setBase(found)
          setPhoto(false)
        }}
      />
    )
  return (
    <div class="desk">
      <DeskHead title={pot ? w.title(nameOf(words.value, pot)) : w.newTitle} back={back} />
      <main class="desk-main-part has-save">
        <div class="pot-picture">
          {outer ? (
            <PotOutline
              outer={outer}
              footLineMm={shape.footLineMm}
              bands={[]}
              width={328}
              height={190}
              label={words.value.desk.form[base.form]}
            />
          ) : (
            <p class="alarm">{w.contradict}</p>
          )}
        </div>
        {isLid ? null : (
          <Choice
            label={w.form}
            hidden
            columns={4}
            options={FORMS.map((form) => ({
              value: form,
              name: words.value.desk.form[form],
              label: (
                <PotGlyph outer={outerOf(stepShape(board, form, 'medium')) ?? []} width={56} height={40} />
              ),
            }))}
            value={base.form}
            onChoose={(form) => setBase(stepShape(board, form, 'medium'))}
          />
        )}
        {isLid ? null : (
          <button type="button" class="key" onClick={() => setPhoto(true)}>
            {w.byPhoto}
          </button>
        )}
        {read ? (
          <>
            <p class="help">{w.read(formats.value.mm(base.heightMm), formats.value.mm(widestOf(base)))}</p>
            <button type="button" class="key" onClick={() => setBase(withoutOutline(base))}>
              {w.byHand}
            </button>
          </>
        ) : null}
        <div class="fields">
          {read ? null : (
            <>
              <EntryField entry={height} label={w.height} />
              <EntryField entry={rim} label={isLid ? w.lidRim : w.rim} />
              {bellied ? <EntryField entry={belly} label={w.belly} /> : null}
              {isStraight ? null : <EntryField entry={foot} label={w.foot} />}
            </>
          )}
          <EntryField entry={wall} label={w.wall} />
          <EntryField entry={footLine} label={isLid ? w.lidEdge : w.footLine} />
          {lidded ? <EntryField entry={gallery} label={w.gallery} /> : null}
          {isLid ? null : <EntryField entry={numbered} label={w.number} />}
          <Field
            label={w.place}
            text={at.text}
            words
            maxLength={5}
            hint={w.placeHint}
            wrong={at.wrong}
            onText={(text) => setAt({ text, wrong: undefined })}
            onDone={() =>
              setAt({ ...at, wrong: readPlace(at.text) ? undefined : words.value.desk.wrong.place })
            }
          />
        </div>
        <p class="help">{w.numberWarn}</p>
        {base.form === 'jar' && !other ? (
          <Switch label={adding.lid} help={adding.lidHelp} on={lid} onSwitch={setLid} />
        ) : null}
        <StackChoice label={w.stack} value={stack} onChoose={setStack} />
        {mayPour(base.form) ? (
          <Switch label={w.pourSwitch} help={w.pourHelp} on={pour} onSwitch={setPour} />
        ) : null}
        <Bisque own={bisque} set={setBisque} absorption={absorption} />
      </main>
      <DeskSave said={said} save={save} label={pot ? undefined : w.put} />
    </div>
  )
}

const ownBisque = ({ bisqueCone, bisqueWater }: OwnBisque = {}): OwnBisque => ({
  ...(bisqueCone === undefined ? {} : { bisqueCone }),
  ...(bisqueWater === undefined ? {} : { bisqueWater }),
})

const widestOf = ({ rimMm, bellyMm = 0 }: ShapeFacts): number => Math.max(rimMm, bellyMm)

/** The measures alone: the form draws the outline between them. */
const withoutOutline = ({ outsideMm: _, ...measures }: ShapeFacts): ShapeFacts => measures

type Measured = { readonly [K in keyof ShapeFacts]?: ShapeFacts[K] | undefined }

/** The shape with what can be read of the measures; what was left empty follows from the form. */
function shapeOf(base: ShapeFacts, read: Measured): ShapeFacts {
  const { form, floorMm, outsideMm } = base
  return {
    form,
    heightMm: read.heightMm ?? base.heightMm,
    rimMm: read.rimMm ?? base.rimMm,
    wallMm: read.wallMm ?? base.wallMm,
    footLineMm: read.footLineMm ?? base.footLineMm,
    ...(read.bellyMm === undefined ? {} : { bellyMm: read.bellyMm }),
    ...(read.footMm === undefined ? {} : { footMm: read.footMm }),
    ...(read.galleryMm === undefined ? {} : { galleryMm: read.galleryMm }),
    ...(floorMm === undefined ? {} : { floorMm }),
    ...(outsideMm === undefined ? {} : { outsideMm }),
    // A belly keeps its place in proportion when the pot grows.
    ...(base.bellyUpMm === undefined || read.heightMm === undefined
      ? {}
      : { bellyUpMm: (base.bellyUpMm * read.heightMm) / base.heightMm }),
  }
}
