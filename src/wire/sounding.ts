import type { TableEvent } from '../../shared/events.ts'
import { planCount } from '../device/sound-plan.ts'
import { outputsOf, type ReadyCall } from '../table/outputs.ts'
import type { Table } from '../table/state.ts'
import type { Devices } from './devices.ts'

/** Sounds what a hit means at once, before it is stored: `atMs` is the tap in page time. */
export function soundHit(devices: Devices, table: Table, events: readonly TableEvent[], atMs: number): void {
  const { sound, haptics } = devices
  for (const event of events) {
    switch (event.kind) {
      case 'dipped': {
        if (event.told) break
        const { leadS, lowerS, holdS } = event
        const plan = planCount({ leadS, lowerS, holdS, dripS: table.settings.dripS })
        sound.count(plan, atMs)
        haptics.count(plan)
        return
      }
      case 'count-cancelled':
        sound.stop()
        haptics.feel('refused')
        return
      case 'count-stopped':
        sound.stop()
        sound.drip(table.settings.dripS, atMs)
        haptics.feel('out')
        return
    }
  }
  haptics.feel('short')
}

/** Who else says calls, and which need not be said any more. */
export interface Caller {
  /** The person heard it, or a track that plays says it. */
  saysItself(call: ReadyCall): boolean
  called(call: ReadyCall): void
}

/** Makes the phone do what the state asks for: stay awake, say what a card wants said, call what is ready. */
export function reconciler(devices: Devices) {
  let awake: boolean | undefined
  let said: string | undefined
  let first = true
  const called = new Set<string>()
  return (table: Table, now: number, atBench: boolean, caller?: Caller): void => {
    const outputs = outputsOf(table, now)
    if (outputs.awake !== awake) {
      awake = outputs.awake
      devices.awake.want(outputs.awake)
    }
    // What stood there when the program opened was not brought by a hit.
    if (outputs.say && outputs.say.key !== said && atBench && !first) devices.sound.say(outputs.say.words)
    if (atBench || first) said = outputs.say?.key
    first = false
    for (const call of outputs.calls) {
      if (called.has(call.key)) continue
      called.add(call.key)
      caller?.called(call)
      if (caller?.saysItself(call)) continue
      devices.sound.call(call.bucketLetter, call.places, call.bucketId)
      devices.haptics.feel('long')
    }
    for (const key of called) if (!outputs.calls.some((call) => call.key === key)) called.delete(key)
  }
}
