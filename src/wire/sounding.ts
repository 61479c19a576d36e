import type { TableEvent } from '../../shared/events.ts'
import { planCount } from '../device/sound-plan.ts'
import { outputsOf } from '../table/outputs.ts'
import type { Table } from '../table/state.ts'
import type { Devices } from './devices.ts'

/** Sounds what a hit means at once, before it is stored: `atMs` is the tap in page time. */
export function soundHit(devices: Devices, table: Table, events: readonly TableEvent[], atMs: number): void {
  const { sound, haptics } = devices
  for (const event of events) {
    switch (event.kind) {
      case 'dipped':
        if (event.told) break
        sound.count(
          planCount({
            leadS: event.leadS,
            lowerS: event.lowerS,
            holdS: event.holdS,
            dripS: table.settings.dripS,
          }),
          atMs,
        )
        haptics.feel('twoShort')
        return
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

/** Makes the phone do what the state asks for: stay awake, call what is ready, and say it again. */
export function reconciler(devices: Devices) {
  let called = ''
  let awake: boolean | undefined
  return (table: Table, now: number): void => {
    const outputs = outputsOf(table, now)
    if (outputs.awake !== awake) {
      awake = outputs.awake
      devices.awake.want(outputs.awake)
    }
    if (!outputs.call) {
      called = ''
      return
    }
    if (outputs.call.key === called) return
    called = outputs.call.key
    devices.sound.call(outputs.call.bucketLetter, outputs.call.places)
    devices.haptics.feel('long')
  }
}
