import type { Page } from '@playwright/test'

/** How a hand holds a phone over another: the code's middle, size and turn in the picture, and how sharp it is. */
export interface Held {
  readonly sizePx: number
  readonly xPx: number
  readonly yPx: number
  readonly turnDeg: number
  readonly blurPx: number
}

export const STILL: Held = { sizePx: 620, xPx: 640, yPx: 360, turnDeg: 0, blurPx: 0 }

/** In place of a camera: pictures of 1280 x 720 that {@link seeing} gives. Comes before the page is opened. */
export const withCamera = (page: Page) =>
  page.addInitScript(() => {
    const canvas = document.createElement('canvas')
    Object.assign(canvas, { width: 1280, height: 720 })
    const context = canvas.getContext('2d')
    if (!context) return
    context.fillStyle = '#666'
    context.fillRect(0, 0, 1280, 720)
    Object.assign(window, {
      async see(bytes: readonly number[], { sizePx, xPx, yPx, turnDeg, blurPx }: Record<string, number>) {
        const code = await createImageBitmap(new Blob([new Uint8Array(bytes)]))
        context.resetTransform()
        context.fillStyle = '#777'
        context.fillRect(0, 0, 1280, 720)
        context.translate(xPx as number, yPx as number)
        context.rotate(((turnDeg as number) * Math.PI) / 180)
        context.filter = blurPx ? `blur(${blurPx}px)` : 'none'
        const side = sizePx as number
        context.drawImage(code, -side / 2, -side / 2, side, side)
        context.filter = 'none'
      },
    })
    navigator.mediaDevices.getUserMedia = async () => canvas.captureStream(24)
  })

/** What `shows` shows now, as the camera of `reads` sees it. */
export async function seeing(reads: Page, shows: Page, held: Held = STILL): Promise<void> {
  const url = await shows.evaluate(async () => {
    const code = document.querySelector('.is-on > .codes-code, :not(figure) > .codes-code')
    if (!(code instanceof SVGElement)) return (code as HTMLCanvasElement | null)?.toDataURL()
    const drawn = new Image(776, 776)
    const text = new XMLSerializer().serializeToString(code)
    drawn.src = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }))
    await drawn.decode()
    const canvas = Object.assign(document.createElement('canvas'), { width: 776, height: 776 })
    canvas.getContext('2d')?.drawImage(drawn, 0, 0, 776, 776)
    return canvas.toDataURL()
  })
  const bytes = [...Buffer.from(url?.split(',')[1] ?? '', 'base64')]
  if (bytes.length > 0) await sees(reads, bytes, held)
}

/** A picture of something else before its camera. */
export const sees = (reads: Page, bytes: readonly number[], held: Held = STILL): Promise<void> =>
  reads.evaluate(
    ([picture, how]) =>
      (window as unknown as { see(picture: readonly number[], how: object): Promise<void> }).see(
        picture,
        how,
      ),
    [bytes, held] as const,
  )
