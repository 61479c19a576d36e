import { useState } from 'preact/hooks'
import type { BucketFacts, Caution } from '../../../shared/nouns.ts'
import { freeLetter, freePattern, NAME_MOST, PATTERNS } from '../../table/entry/offer.ts'
import { potsOnTable } from '../../table/model/plan.ts'
import type { BucketState, Table } from '../../table/model/state.ts'
import { Choice, Switch } from '../../ui/choice.tsx'
import { Field } from '../../ui/field.tsx'
import { HoldKey } from '../../ui/hold.tsx'
import { More } from '../../ui/more.tsx'
import { PatternBand, Swatch } from '../../ui/swatch.tsx'
import { type Route, refusalText } from '../app.ts'
import { useBucketWords } from '../desk/bucket-words.ts'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, refusalBeside, type Typed, useEntry } from '../desk/entry-field.tsx'
import { DeskHead } from '../desk/head.tsx'
import { DeskSave } from '../desk/save.tsx'
import { useShowWrong } from '../desk/show-wrong.ts'
import { SpokenName } from '../desk/spoken-name.tsx'
import { DensityCheck } from './density.tsx'
import { DippedTiles } from './dipped.tsx'
import { DoseFor } from './dose.tsx'
import { BucketFace } from './face.tsx'
import { Fill } from './fill.tsx'
import { Pairs } from './pairs.tsx'
import { PickUp } from './pick-up.tsx'
import { SlideCard } from './slide.tsx'
import { TileLine } from './tile-line.tsx'

const CAUTIONS: readonly Caution[] = ['lead', 'cadmium', 'barium', 'manganese', 'other']

/** What a bucket usually is where nothing was said: a 20 L pail two thirds full. Common practice, no source. */
const USUAL = {
  targetGramsPerMl: 1.45,
  toleranceGramsPerMl: 0.02,
  solidsGravity: 2.6,
  insideMm: 290,
  litres: 13,
  heightMm: 330,
  limitMm: 1.2,
} as const

interface BucketEditorProps {
  readonly bucket: BucketState | undefined
  /** Where one was going. */
  readonly onward: Route | undefined
  /** The new bucket that was saved just before this one. */
  readonly added: string | undefined
  /** Begins another new one, after this was saved. */
  readonly another: (name: string) => void
}

/** Everything about one bucket. Nothing is stored until all of it is right. */
export function BucketEditor({ bucket, onward, added, another }: BucketEditorProps) {
  const { table, words, act, go } = useDesk()
  const facts = bucket?.facts
  const w = useBucketWords()
  const wrongs = words.value.desk.wrong
  const like = facts ?? lastBucket(table.value) ?? USUAL
  const [name, setName] = useState<Typed>({ text: facts?.name ?? '' })
  const [letter, setLetter] = useState<Partial<Typed>>({ text: facts?.letter })
  const [pattern, setPattern] = useState(() => facts?.pattern ?? freePattern(table.peek()))
  const [cautions, setCautions] = useState<readonly Caution[]>(facts?.cautions ?? [])
  const [clings, setClings] = useState(facts?.clingsGramsPerCm2)
  const [dipped, setDipped] = useState(facts?.dippedTiles ?? [])
  const [said, setSaid] = useState<string>()
  const { page, tried } = useShowWrong()
  const target = useEntry('gramsPerMl', facts?.targetGramsPerMl ?? USUAL.targetGramsPerMl)
  const tolerance = useEntry('toleranceGramsPerMl', like.toleranceGramsPerMl)
  const solids = useEntry('solidsGravity', facts?.solidsGravity ?? USUAL.solidsGravity)
  const inside = useEntry('insideMm', like.insideMm)
  const height = useEntry('bucketHeightMm', like.heightMm)
  const litres = useEntry('litres', like.litres)
  const limit = useEntry('limitMm', facts?.limitMm ?? USUAL.limitMm)
  const pin = useEntry('pinMm', facts?.pinMm, true)
  const reading = useEntry(
    'gramsPerMl',
    bucket?.densityAt === undefined ? undefined : bucket.gramsPerMl,
    true,
  )
  const entries = [target, tolerance, solids, inside, height, litres, limit, pin]
  const ownLetter = letter.text ?? freeLetter(table.value, name.text, facts?.bucketId)

  /** Keeps a reading that was typed; answers whether nothing stands in the way. */
  const keep = (): boolean => {
    if (!reading.check()) return false
    if (!facts || reading.value === undefined) return true
    const refusal = act({ do: 'read-density', bucketId: facts.bucketId, gramsPerMl: reading.value })
    if (refusal) reading.refuse(refusalText(words.value, refusal))
    return refusal === undefined
  }
  const save = (saved: () => void) => () => {
    tried()
    const right = entries.map((entry) => entry.check()).every(Boolean)
    const named = name.text.trim() !== '' && [...name.text.trim()].length <= NAME_MOST
    if (!named) setName({ ...name, wrong: wrongs.name(NAME_MOST) })
    const lettered = /^\p{Lu}$/u.test(ownLetter)
    if (!lettered) setLetter({ text: ownLetter, wrong: wrongs.letter })
    if (!right || !named || !lettered || !reading.check()) return
    const next: Omit<BucketFacts, 'bucketId'> = {
      name: name.text,
      letter: ownLetter,
      pattern,
      targetGramsPerMl: target.value ?? USUAL.targetGramsPerMl,
      toleranceGramsPerMl: tolerance.value ?? like.toleranceGramsPerMl,
      solidsGravity: solids.value ?? USUAL.solidsGravity,
      insideMm: inside.value ?? like.insideMm,
      heightMm: height.value ?? like.heightMm,
      litres: litres.value ?? like.litres,
      limitMm: limit.value ?? USUAL.limitMm,
      cautions,
      ...(pin.value === undefined ? {} : { pinMm: pin.value }),
      ...(clings === undefined ? {} : { clingsGramsPerCm2: clings }),
      ...(dipped.length === 0 ? {} : { dippedTiles: dipped }),
    }
    const refusal = act({ do: 'set-bucket', bucket: facts ? { ...next, bucketId: facts.bucketId } : next })
    if (!refusal) {
      if (reading.changed) keep()
      return saved()
    }
    const text = refusalText(words.value, refusal)
    if (refusal.field === 'letter') setLetter({ text: ownLetter, wrong: text })
    else if (refusal.field === 'bucket') setName({ ...name, wrong: text })
    else if (!refusalBeside(words.value, refusal, entries)) setSaid(text)
  }

  const nameField = (
    <Field
      label={w.name}
      text={name.text}
      words
      hint={words.value.desk.letters(NAME_MOST)}
      wrong={name.wrong}
      first={!facts}
      onText={(text) => setName({ text, wrong: undefined })}
    />
  )
  return (
    <div class="desk">
      <DeskHead
        title={facts?.name ?? w.newTitle}
        {...(facts || added === undefined ? {} : { under: w.added(added) })}
        back={onward ?? { at: 'buckets' }}
      >
        <Swatch pattern={pattern} letter={ownLetter} size={52} />
      </DeskHead>
      <main class="desk-main-part has-save" ref={page}>
        {bucket ? (
          <>
            <BucketFace bucket={bucket} />
            <DensityCheck bucket={bucket} reading={reading} keep={() => void keep()} />
            <Fill bucket={bucket} />
          </>
        ) : (
          nameField
        )}
        <More label={facts ? w.more.mark : w.more.newMark} buys={w.more.markBuys}>
          {facts ? nameField : null}
          <Field
            label={w.letter}
            text={ownLetter}
            words
            hint={w.letterHint}
            wrong={letter.wrong}
            onText={(text) => setLetter({ text: text.trim().toUpperCase(), wrong: undefined })}
          />
          {facts ? <SpokenName bucketId={facts.bucketId} /> : null}
          <Choice
            label={w.pattern}
            columns={4}
            options={PATTERNS.map((value) => ({
              value,
              name: words.value.desk.pattern[value],
              label: (
                <span class="pattern-key">
                  <PatternBand pattern={value} />
                </span>
              ),
            }))}
            value={pattern}
            onChoose={setPattern}
          />
        </More>
        <More label={w.more.density} buys={w.more.densityBuys}>
          <div class="fields">
            <EntryField entry={target} label={w.target} />
            <EntryField entry={tolerance} label={w.tolerance} />
            <EntryField entry={solids} label={w.solids} help={w.solidsHelp} />
          </div>
          <DippedTiles
            tiles={dipped}
            take={setDipped}
            readGramsPerMl={bucket?.densityAt === undefined ? undefined : bucket.gramsPerMl}
            targetGramsPerMl={target.value}
            toleranceGramsPerMl={tolerance.value}
          />
        </More>
        <More label={w.more.coat} buys={w.more.coatBuys}>
          <div class="fields">
            <EntryField entry={pin} label={w.pin} help={w.pinHelp} />
            <EntryField entry={limit} label={w.limit} />
          </div>
          <PickUp facts={facts} pin={pin} gramsPerMl={target.value} solidsGravity={solids.value} />
          <SlideCard
            clings={clings}
            take={setClings}
            gramsPerMl={target.value}
            solidsGravity={solids.value}
          />
          {bucket ? <DoseFor bucket={bucket} /> : null}
        </More>
        <More label={w.more.vessel} buys={w.more.vesselBuys}>
          <div class="fields">
            <EntryField entry={inside} label={w.inside} />
            <EntryField entry={height} label={w.height} />
            {facts ? null : <EntryField entry={litres} label={w.litres} help={w.sizes} />}
          </div>
        </More>
        <More label={w.more.contains} buys={w.more.containsBuys}>
          <p class="help">{w.cautionsHelp}</p>
          {CAUTIONS.map((caution) => (
            <Switch
              key={caution}
              label={w.caution[caution]}
              on={cautions.includes(caution)}
              onSwitch={(on) =>
                setCautions(on ? [...cautions, caution] : cautions.filter((one) => one !== caution))
              }
            />
          ))}
        </More>
        {bucket ? <Pairs bucket={bucket} /> : null}
        {facts ? <TileLine bucketId={facts.bucketId} /> : null}
        {facts ? (
          <HoldKey
            label={w.remove}
            hint={words.value.desk.holdHint}
            onHeld={() => {
              const refusal = act({ do: 'remove-bucket', bucketId: facts.bucketId })
              if (refusal) setSaid(refusalText(words.value, refusal))
              else go({ at: 'buckets' })
            }}
          />
        ) : null}
      </main>
      <DeskSave
        said={said}
        save={save(() =>
          go(onward ?? (potsOnTable(table.value).length === 0 ? { at: 'board' } : { at: 'buckets' })),
        )}
        {...(facts ? {} : { other: { label: w.saveAnother, save: save(() => another(name.text.trim())) } })}
      />
    </div>
  )
}

/** A new bucket is likely of the same make as the one before it. */
const lastBucket = (table: Table): BucketFacts | undefined => Object.values(table.buckets).at(-1)?.facts
