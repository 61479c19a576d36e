import { effect, type ReadonlySignal, signal } from '@preact/signals'
import { lastCopiedMs } from '../device/seen.ts'
import type { Health } from '../screens/app.ts'
import { witness } from '../store/index.ts'
import type { Fetched } from '../ui/fetched.ts'
import type { Devices } from './devices.ts'
import type { Records } from './records.ts'
import type { Sounding } from './sounding.ts'

/** How the phone is doing, as far as it tells; `patch` for what others find out. */
export function openHealth(
  { journal, saved, readOnly, unread, recovered }: Records,
  { awake, install }: Devices,
  sounding: Fetched<Sounding>,
  demo: boolean,
): { readonly health: ReadonlySignal<Health>; patch(part: Partial<Health>): void } {
  // Said again at each start until it was read.
  const short = demo ? undefined : witness()?.short
  const health = signal<Health>({
    saved: saved.peek(),
    sound: 'locked',
    soundsElsewhere: false,
    awake: awake.state(),
    offlineReady: navigator.serviceWorker?.controller != null,
    update: false,
    fellBack: false,
    readOnly: readOnly.peek(),
    quarantined: journal.opening.quarantined.length,
    unread: unread.peek(),
    lost: !demo && recovered === 0 && journal.records.length === 0 ? (witness()?.count ?? 0) : 0,
    recovered: short?.back ?? recovered,
    recoveredOf: short?.of ?? recovered,
    copiedAt: lastCopiedMs(),
    install: install.state(),
  })
  const patch = (part: Partial<Health>) => {
    health.value = { ...health.peek(), ...part }
  }
  effect(() =>
    patch({
      saved: saved.value,
      readOnly: readOnly.value,
      unread: unread.value,
      quarantined: journal.opening.quarantined.length,
    }),
  )
  awake.onChange((state) => patch({ awake: state }))
  install.onChange((state) => patch({ install: state }))
  sounding.with(({ sound, here }) => {
    effect(() => patch({ soundsElsewhere: !here.value }))
    patch({ sound: sound.health() })
    sound.onHealth((state) => patch({ sound: state }))
  })
  return { health, patch }
}
