import { useEffect, useRef } from 'preact/hooks'
import { KnuckleBar } from '../../ui/bar.tsx'
import { HoldKey } from '../../ui/hold.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { KilnMain } from '../desk/kiln-main.tsx'
import { useSet } from '../desk/settings.ts'
import { ToSettle } from '../desk/to-settle.tsx'
import { useBar } from '../desk/use-bar.ts'
import { usePassingWords } from './words.ts'
import './student.css'

/** No wet hand rests on one place for so long, ms. */
const LEAVE_MS = 3000

/** In place of every screen but the bench, on a phone that shows that alone: the ways on, and the one out. */
export function Student() {
  const { attachBench, go } = useDesk()
  const words = usePassingWords()
  const w = words.student
  const set = useSet()
  const root = useRef<HTMLDivElement>(null)
  useEffect(() => (root.current ? attachBench(root.current).detach : undefined), [])
  const toBench = () => go({ at: 'bench' })
  useBar(toBench)
  return (
    <div class="desk kiln student" ref={root}>
      <KilnMain>
        <h1>{w.title}</h1>
        <p>{w.why}</p>
        <ToSettle />
        <button type="button" class="desk-second" onClick={() => go({ at: 'codes' })}>
          {words.title}
        </button>
        <HoldKey label={w.leave} hint={w.leaveHint} ms={LEAVE_MS} onHeld={() => set('student', false)} />
      </KilnMain>
      <KnuckleBar label={words.toBench} />
    </div>
  )
}
