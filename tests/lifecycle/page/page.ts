import { openJournal } from '../../../src/store/index.ts'
import { CLOCKS, type PageEvent } from './sitting.ts'

/** What the five buttons and the tests use. Nothing but the store stands behind it. */
const opened = performance.now()
const journal = await openJournal<PageEvent>({
  table: 'own',
  isEvent: (event) => event.kind === 'started' || event.kind === 'noted',
  content: async () => () => undefined,
})
const openMs = performance.now() - opened

const stamp = () => ({ at: Date.now(), tz: 0, mono: performance.now() })

/** One hit: a clock starts, with a note or not, so that hits have one event or two. */
function hit(clock: number, note = '') {
  const started: PageEvent = { kind: 'started', clock, dueAt: Date.now() + 600_000 }
  return journal.append(note ? [started, { kind: 'noted', text: note }] : [started], stamp())
}

window.sitting = { journal, hit, openMs }

for (let clock = 1; clock <= CLOCKS; clock++) {
  const button = document.createElement('button')
  button.textContent = `Clock ${clock}`
  button.dataset.clock = String(clock)
  button.addEventListener('click', () => hit(clock, clock % 2 ? `clock ${clock}` : ''))
  document.body.append(button)
}
document.body.dataset.ready = 'true'
