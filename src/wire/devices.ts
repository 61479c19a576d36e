import { openClock } from '../device/clock.ts'
import { openHaptics } from '../device/haptics.ts'
import { openInstall } from '../device/install.ts'
import { openLifecycle } from '../device/lifecycle.ts'
import { openShare } from '../device/share.ts'
import { openSound } from '../device/sound.ts'
import { openVoice } from '../device/voice.ts'
import { openAwake } from '../device/wake.ts'

/** The phone, opened once. */
export function openDevices() {
  const clock = openClock()
  const voice = openVoice()
  return {
    clock,
    voice,
    lifecycle: openLifecycle(clock),
    sound: openSound(voice),
    awake: openAwake(),
    haptics: openHaptics(),
    install: openInstall(),
    share: openShare(),
  }
}

export type Devices = ReturnType<typeof openDevices>
