import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { Handout } from '../../../shared/nouns.ts'
import { handoutOf } from '../../table/entry/handout.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import type { Route } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { useBar } from '../desk/use-bar.ts'
import type { Passing } from '../passing.ts'
import { StillCodes } from './code.tsx'
import { StackLines } from './handout-lines.tsx'
import { usePassingWords } from './words.ts'
import './codes.css'

/** A stack, or all of them, as one code for other phones, on the screen or on paper. */
export function HandoutPage({ stackId }: { readonly stackId?: string | undefined }) {
  const { table, go } = useDesk()
  const w = usePassingWords().handout
  const handout = useMemo(() => handoutOf(table.value, stackId), [table.value, stackId])
  const back: Route = { at: 'stacks', ...(stackId === undefined ? {} : { stackId }) }
  return <HandoutCodes handout={handout} title={w.title} how={w.how} back={() => go(back)} />
}

interface CodesProps {
  readonly handout: Handout
  readonly title: string
  readonly how: string
  readonly back: () => void
}

/** What is handed on, as codes that stand still, and in words. */
export function HandoutCodes({ handout, title, how, back }: CodesProps) {
  const { attachBench } = useDesk()
  const w = usePassingWords()
  const root = useRef<HTMLDivElement>(null)
  const passing = usePassing()
  useEffect(() => (root.current ? attachBench(root.current).detach : undefined), [])
  useEffect(() => {
    passing?.stayLit(true)
    return () => passing?.stayLit(false)
  }, [passing])
  const codes = useMemo(() => passing?.stillCodes(handout), [passing, handout])
  useBar(back)
  return (
    <div class="desk kiln codes codes-handout" ref={root}>
      <DeskHead title={title} back={back}>
        <button type="button" class="key" onClick={() => window.print()}>
          {w.handout.print}
        </button>
      </DeskHead>
      <KilnMain>
        {codes && codes.length > 0 ? (
          <>
            <StillCodes codes={codes} label={how} nth={w.handout.nth} />
            <p>{how}</p>
          </>
        ) : codes ? (
          <p class="kiln-big">{handout.stacks.length === 0 ? w.handout.none : w.handout.tooMuch}</p>
        ) : null}
        {handout.stacks.map((stack) => (
          <StackLines key={stack.stackId} stack={stack} buckets={handout.buckets} />
        ))}
      </KilnMain>
      <KnuckleBar label={w.done} />
    </div>
  )
}

/** What draws and reads codes; undefined until it is here. */
export function usePassing(): Passing | undefined {
  const { passing: open } = useDesk()
  const [passing, setPassing] = useState<Passing>()
  useEffect(() => void open().then(setPassing), [])
  return passing
}
