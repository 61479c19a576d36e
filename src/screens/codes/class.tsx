import { useMemo, useState } from 'preact/hooks'
import type { PotFacts } from '../../../shared/nouns.ts'
import { classOf, namesIn, potsOf } from '../../table/entry/handout.ts'
import { checkName, NAME_MOST } from '../../table/model/limits.ts'
import { isBegun, potsOnTable } from '../../table/model/plan.ts'
import { Field } from '../../ui/field.tsx'
import { refusalText } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { DeskSave } from '../desk/save.tsx'
import { placeText } from '../text/amounts.ts'
import { ClassSheet } from './class-sheet.tsx'
import { HandoutCodes } from './handout.tsx'
import { usePassingWords } from './words.ts'
import './codes.css'
import './class.css'

/** A class at one table: whose each pot is, all of it as codes for their phones, and as a sheet to print. */
export function ClassPage() {
  const { table } = useDesk()
  const w = usePassingWords().class
  const [page, setPage] = useState<'pots' | 'codes' | 'sheet'>('pots')
  const back = () => setPage('pots')
  const handout = useMemo(() => classOf(table.value), [table.value])
  if (page === 'sheet') return <ClassSheet handout={handout} back={back} />
  if (page === 'codes') return <HandoutCodes handout={handout} title={w.plan} how={w.how} back={back} />
  return <Whose open={setPage} />
}

function Whose({ open }: { readonly open: (page: 'codes' | 'sheet') => void }) {
  const { table, words, act } = useDesk()
  const w = usePassingWords().class
  const [typed, setTyped] = useState('')
  const [added, setAdded] = useState<readonly string[]>([])
  const [name, setName] = useState<string>()
  const [wrong, setWrong] = useState<string>()
  const pots = potsOnTable(table.value)
  const facts = pots.map((pot) => pot.facts)
  const known = namesIn(facts)
  const names = [...known, ...added.filter((one) => !known.includes(one))]
  const begun = pots.filter((pot) => isBegun(pot) && pot.facts.lidOf === undefined)
  const add = () => {
    const fresh = typed.trim()
    const refusal = checkName('whose', fresh)
    if (refusal) return setWrong(refusalText(words.value, refusal))
    setAdded([...added.filter((one) => one !== fresh), fresh])
    setName(fresh)
    setTyped('')
  }
  const give = ({ whose, ...pot }: PotFacts) => {
    if (name === undefined) return
    const refusal = act({ do: 'set-pot', pot: whose === name ? pot : { ...pot, whose: name } })
    setWrong(refusal && refusalText(words.value, refusal))
  }
  return (
    <div class="desk class">
      <DeskHead title={w.title} back={{ at: 'codes' }} />
      <main class="desk-main-part has-save">
        {pots.length === 0 ? <p>{w.none}</p> : <p>{name === undefined ? w.first : w.tap(name)}</p>}
        {names.length > 0 ? (
          <div class="kiln-keys">
            {names.map((one) => (
              <button
                key={one}
                type="button"
                class="key"
                aria-pressed={one === name}
                onClick={() => setName(one === name ? undefined : one)}
              >
                {one} <span class="figures">{w.has(potsOf(facts, one).length)}</span>
              </button>
            ))}
          </div>
        ) : null}
        <div class="class-add">
          <Field
            label={w.name}
            text={typed}
            words
            maxLength={NAME_MOST}
            {...(wrong === undefined ? {} : { wrong })}
            onText={(text) => {
              setTyped(text)
              setWrong(undefined)
            }}
          />
          <button type="button" class="key" onClick={add}>
            {w.add}
          </button>
        </div>
        <ul class="class-pots">
          {facts
            .filter(({ lidOf }) => lidOf === undefined)
            .map((pot) => (
              <li key={pot.potId}>
                <button
                  type="button"
                  class="key"
                  aria-label={w.pot(pot.number, placeText(pot.place), pot.whose)}
                  aria-pressed={name !== undefined && pot.whose === name}
                  onClick={() => give(pot)}
                >
                  <small class="figures">{placeText(pot.place)}</small>
                  <strong class="figures">{pot.number}</strong>
                  <small>{pot.whose ?? '–'}</small>
                </button>
              </li>
            ))}
        </ul>
        {begun.length > 0 ? <p class="figures">{w.begun(begun.map((pot) => pot.facts.number))}</p> : null}
        {pots.length > 0 ? (
          <button type="button" class="desk-second" onClick={() => open('sheet')}>
            {w.sheet}
          </button>
        ) : null}
      </main>
      {pots.length > 0 ? <DeskSave said={undefined} save={() => open('codes')} label={w.show} /> : null}
    </div>
  )
}
