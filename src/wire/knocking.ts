import { type ReadonlySignal, signal } from '@preact/signals'
import { get } from 'idb-keyval'
import { feelKnocks, hearKnocks, type Listener } from '../device/listen.ts'
import type { KnockBy, KnockView } from '../screens/extras.ts'
import { CARD_ROWS } from '../table/card/card.ts'
import type { Parts } from './extras.ts'
import { keep } from './local.ts'

const KEY = 'knock'
export interface Knocking {
  readonly view: ReadonlySignal<KnockView>
  /** Inside a tap: phones ask the person first. */
  set(by: KnockBy): void
}

/** Knocks on the table as the big action, or as the answer to a call. Off until the person turns it on. */
export async function openKnocking(
  parts: Parts,
  calling: () => boolean,
  heard: () => void,
): Promise<Knocking> {
  const view = signal<KnockView>({ by: 'off', state: 'off' })
  let listener: Listener | undefined
  let latest = 0
  const ears = {
    heard: () => parts.sounding.sound.heard(),
    onKnock() {
      if (calling()) heard()
      else if (CARD_ROWS[parts.card.peek().kind]?.knocks)
        parts.bench.pressBar('knock', parts.devices.clock.pageMs())
    },
  }
  const listen = async (by: KnockBy): Promise<void> => {
    latest++
    const mine = latest
    listener?.stop()
    listener = undefined
    view.value = { by, state: 'off' }
    if (by === 'off') return
    const opened = await (by === 'motion' ? feelKnocks(ears) : hearKnocks(ears))
    if (mine !== latest) return opened.stop()
    listener = opened
    view.value = { by, state: opened.state }
  }
  const before = (await get<KnockBy>(KEY, parts.store).catch(() => undefined)) ?? 'off'
  // A microphone is opened by the person's own tap only, each time anew.
  if (before === 'motion') void listen(before)
  return {
    view,
    set(by) {
      keep(parts.store, KEY, by)
      void listen(by)
    },
  }
}
