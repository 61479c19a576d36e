import type { Form } from '../../../shared/nouns.ts'
import { showEntry } from '../../table/entry/entry.ts'
import { FORMS, outerOf, SIZES, type Size, stepShape } from '../../table/entry/offer.ts'
import { Choice } from '../../ui/choice.tsx'
import { PotGlyph, scaleFor } from '../../ui/glyph.tsx'
import { rulerInches } from '../../words/format.ts'
import { marked } from '../../words/number.ts'
import { useDesk } from '../desk/desk-app.ts'
import { useAddWords } from './add-words.ts'

const GLYPH = { width: 60, height: 42 }

/** A length on one line, if need be below another. */
const whole = (text: string): string => text.replaceAll(' ', '\u00a0')

/** The forms of pots as keys. */
export function Forms({
  chosen,
  onChoose,
}: {
  readonly chosen: Form
  readonly onChoose: (form: Form | 'own') => void
}) {
  const { table, words } = useDesk()
  const w = words.value.desk
  const adding = useAddWords()
  const drawn = FORMS.map((form) => ({
    value: form,
    name: w.form[form],
    label: (
      <>
        <PotGlyph outer={outerOf(stepShape(table.value.board, form, 'medium')) ?? []} {...GLYPH} />
        <span>{w.form[form]}</span>
      </>
    ),
  }))
  const own = {
    value: 'own' as const,
    name: adding.ownName,
    label: (
      <>
        <RulerGlyph />
        <span>{adding.own}</span>
      </>
    ),
  }
  return (
    <Choice
      label={adding.which}
      hidden
      columns={4}
      options={[...drawn, own]}
      value={chosen}
      onChoose={onChoose}
    />
  )
}

/** A ruler: measures of one's own. */
const RulerGlyph = () => (
  <svg width={GLYPH.width} height={GLYPH.height} viewBox="0 5 60 42" aria-hidden="true" fill="none">
    <path d="M6 20 H54 V40 H6 Z" stroke="currentColor" stroke-width="3" stroke-linejoin="round" />
    <path d="M14 21 V30 M22 21 V27 M30 21 V30 M38 21 V27 M46 21 V30" stroke="currentColor" stroke-width="3" />
  </svg>
)

const SIZE_BOX = { width: 92, height: 98 }

/** A form's sizes, drawn to one scale. */
export function Sizes({ form, onChoose }: { readonly form: Form; readonly onChoose: (size: Size) => void }) {
  const { table, words, formats } = useDesk()
  const { units } = table.value.settings
  const w = words.value.desk
  const adding = useAddWords()
  const shapes = SIZES.map((size) => {
    const shape = stepShape(table.value.board, form, size)
    return { size, shape, outer: outerOf(shape) ?? [] }
  })
  const scale = Math.min(...shapes.map(({ outer }) => scaleFor(outer, SIZE_BOX.width, SIZE_BOX.height)))
  return (
    <fieldset class="sizes">
      <legend class="visually-hidden">{adding.size}</legend>
      {shapes.map(({ size, shape, outer }) => (
        <button key={size} type="button" class="key size" onClick={() => onChoose(size)}>
          <PotGlyph outer={outer} {...SIZE_BOX} scale={scale} />
          <strong>{w.size[size]}</strong>
          <small class="figures">
            {adding.measures(
              whole(
                units === 'us'
                  ? rulerInches(shape.heightMm)
                  : marked(showEntry('heightMm', shape.heightMm, units)),
              ),
              whole(formats.value.mm(shape.rimMm)),
            )}
          </small>
        </button>
      ))}
    </fieldset>
  )
}
