/** The camera on the other side of the phone, one picture at a time. */

/** Longest side of what is looked at: a code that fills it has pixels enough a module. */
const SIDE_PX = 800
/** Between two looks where the browser does not tell of new pictures. */
const EACH_MS = 60

export type CameraFault = 'refused' | 'none' | 'busy'

export class CameraError extends Error {
  override readonly name = 'CameraError'
  constructor(readonly fault: CameraFault) {
    super(`camera ${fault}`)
  }
}

const FAULTS: Readonly<Record<string, CameraFault>> = {
  NotAllowedError: 'refused',
  SecurityError: 'refused',
  NotReadableError: 'busy',
  AbortError: 'busy',
}

export interface Camera {
  /** Shows what it sees. */
  readonly video: HTMLVideoElement
  /** The middle of the next picture; undefined once it is closed, or while there is none. */
  next(): Promise<ImageData | undefined>
  close(): void
}

/** @throws CameraError, rejecting, where there is none or it may not be used. */
export async function openCamera(): Promise<Camera> {
  if (!navigator.mediaDevices?.getUserMedia) throw new CameraError('none')
  const stream = await navigator.mediaDevices
    .getUserMedia({
      audio: false,
      video: { facingMode: 'environment', width: { ideal: 1920 }, height: { ideal: 1080 } },
    })
    .catch((error: DOMException) => {
      throw new CameraError(FAULTS[error.name] ?? 'none')
    })
  const video = document.createElement('video')
  Object.assign(video, { muted: true, playsInline: true, srcObject: stream })
  const canvas = document.createElement('canvas')
  const context = canvas.getContext('2d', { willReadFrequently: true })
  let open = true
  const close = () => {
    open = false
    for (const track of stream.getTracks()) track.stop()
    video.srcObject = null
  }
  // Taken away by another app, or by the phone going to sleep.
  stream.getVideoTracks()[0]?.addEventListener('ended', close)
  await video.play().catch(() => {})
  const newPicture = () =>
    new Promise<void>((resolve) => {
      if (typeof video.requestVideoFrameCallback === 'function') {
        video.requestVideoFrameCallback(() => resolve())
        // A camera that was taken away gives none.
        setTimeout(resolve, 1000)
      } else setTimeout(resolve, EACH_MS)
    })
  return {
    video,
    close,
    async next() {
      await newPicture()
      const { videoWidth: width, videoHeight: height } = video
      const side = Math.min(width, height)
      if (!open || side === 0 || !context) return undefined
      const drawn = Math.min(side, SIDE_PX)
      Object.assign(canvas, { width: drawn, height: drawn })
      context.drawImage(video, (width - side) / 2, (height - side) / 2, side, side, 0, 0, drawn, drawn)
      return context.getImageData(0, 0, drawn, drawn)
    },
  }
}
