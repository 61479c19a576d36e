import { computed, effect } from '@preact/signals'
import { openNotices } from '../device/notices.ts'
import { type LoadCall, loadCalls } from '../table/load/calls.ts'
import { callWords } from '../table/load/kiln-spoken.ts'
import { LID_C, UNLOAD_C } from '../table/load/loads.ts'
import { KILN_WORDS } from '../words/kiln.ts'
import type { Lent } from './extras.ts'

/** A call that was missed for so long is not made any more, ms: the kiln's own screen says it. */
const LATE_MS = 30 * 60_000
/** One notice of what comes next at the kiln stays to be read; another rings when it is due. */
const NEXT_TAG = 'kiln-next'
const CALL_TAG = 'kiln'

/** What a call is titled by, with its temperature in the units of the phone. */
export function callTitle(
  { table, formats }: Pick<Lent, 'table' | 'formats'>,
  what: LoadCall['what'],
): string {
  const title = KILN_WORDS[table.peek().settings.language].call[what]
  return typeof title === 'string' ? title : title(formats.peek().temp(what === 'lid' ? LID_C : UNLOAD_C))
}

/** Rings, and posts a notice, when a cone, a lid or a reading of a load is due. Returns what is ahead. */
export function openKilnCalls(lent: Pick<Lent, 'table' | 'now' | 'formats' | 'sounding'>): {
  ahead(): readonly LoadCall[]
} {
  const { table, now, formats, sounding } = lent
  const body = () => KILN_WORDS[table.peek().settings.language].body
  const notices = openNotices()
  // The loads alone: what cools is not computed anew with every hit at the bench.
  const loads = computed(() => table.value.loads)
  const calls = computed(() => (loads.value ? loadCalls(table.peek()) : []))
  const made = new Set<string>()
  let posted = ''
  // A reading moves all but the end of a hold, the last look at its cone what is called of that; once it bends no reading does.
  const keyOf = ({ loadId, what, at }: LoadCall) => {
    const load = loads.peek()?.[loadId]
    const look = what === 'cone' ? load?.cones.findLast(({ cone }) => cone === load.firing.cone) : undefined
    const moved = what === 'hold' ? at : look?.is === 'bending' ? '' : load?.readings.length
    return [loadId, what, moved, look?.hit].join()
  }
  const epoch = (at: number) => at + table.peek().skewMs
  effect(() => {
    for (const call of calls.value) {
      const overdueMs = now.value - call.at
      if (overdueMs < 0 || overdueMs > LATE_MS || made.has(keyOf(call))) continue
      made.add(keyOf(call))
      sounding.sound.warn(callWords(table.peek(), call.loadId, call.what))
      const title = callTitle(lent, call.what)
      void notices.post({ tag: CALL_TAG, title, body: body(), atMs: epoch(call.at), silent: false })
    }
  })
  effect(() => {
    const next = calls.value.find(({ at }) => at > now.peek())
    const title = next ? `${formats.peek().clock(epoch(next.at))} ${callTitle(lent, next.what)}` : ''
    if (title === posted) return
    posted = title
    if (next) {
      void notices.post({ tag: NEXT_TAG, title, body: body(), atMs: epoch(next.at), silent: true })
    } else void notices.clear(NEXT_TAG)
  })
  return { ahead: () => calls.peek().filter(({ at }) => at > now.peek()) }
}
