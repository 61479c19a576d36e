import { openClock } from '../device/clock.ts'
import { openHaptics } from '../device/haptics.ts'
import { openInstall } from '../device/install.ts'
import { openLifecycle } from '../device/lifecycle.ts'
import { openAwake } from '../device/wake.ts'

/** The phone, opened once, but for its sound: see `sounding.ts`. */
export function openDevices() {
  const clock = openClock()
  return {
    clock,
    lifecycle: openLifecycle(clock),
    awake: openAwake(),
    haptics: openHaptics(),
    install: openInstall(),
  }
}

export type Devices = ReturnType<typeof openDevices>
