import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { handoutOf } from '../../table/entry/handout.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { useBar } from '../desk/use-bar.ts'
import type { Passing } from '../passing.ts'
import { StillCode } from './code.tsx'
import { StackLines } from './handout-lines.tsx'
import { usePassingWords } from './words.ts'
import './codes.css'

/** A stack, or all of them, as one code for other phones, on the screen or on paper. */
export function HandoutPage({ stackId }: { readonly stackId?: string | undefined }) {
  const { attachBench, passing: open, table, go } = useDesk()
  const w = usePassingWords()
  const root = useRef<HTMLDivElement>(null)
  const [passing, setPassing] = useState<Passing>()
  useEffect(() => (root.current ? attachBench(root.current).detach : undefined), [])
  useEffect(() => void open().then(setPassing), [])
  useEffect(() => {
    passing?.stayLit(true)
    return () => passing?.stayLit(false)
  }, [passing])
  const handout = useMemo(() => handoutOf(table.value, stackId), [table.value, stackId])
  const rows = useMemo(() => passing?.stillCode(handout), [passing, handout])
  const back = { at: 'stacks', ...(stackId === undefined ? {} : { stackId }) } as const
  useBar(() => go(back))
  return (
    <div class="desk kiln codes codes-handout" ref={root}>
      <DeskHead title={w.handout.title} back={back}>
        <button type="button" class="key" onClick={() => window.print()}>
          {w.handout.print}
        </button>
      </DeskHead>
      <KilnMain>
        {rows ? (
          <>
            <StillCode rows={rows} label={w.handout.how} />
            <p>{w.handout.how}</p>
          </>
        ) : passing ? (
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
