/** Longest side of a kept picture, px: enough to see crawling by, and a tenth of what a camera gives. */
const LONGEST_PX = 1280
const TYPE = 'image/jpeg'
const QUALITY = 0.82

const plain = (width: number, height: number) => {
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(width))
  canvas.height = Math.max(1, Math.round(height))
  return canvas
}

/** A picture to be measured, upright, at its own size; parts of it by their sides, 0 to 1. Rejects where it is none. */
export async function openPicture(file: Blob) {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' })
  type Part = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number }
  const draw = (canvas: HTMLCanvasElement, { x0, y0, x1, y1 }: Part) => {
    const context = canvas.getContext('2d', { alpha: false })
    if (!context) throw new Error('no canvas')
    const [wide, high] = [(x1 - x0) * picture.width, (y1 - y0) * picture.height]
    context.imageSmoothingQuality = 'high'
    context.drawImage(
      picture,
      x0 * picture.width,
      y0 * picture.height,
      wide,
      high,
      0,
      0,
      canvas.width,
      canvas.height,
    )
    return context
  }
  return {
    width: picture.width,
    height: picture.height,
    draw,
    pixels(part: Part, longest: number) {
      const [wide, high] = [(part.x1 - part.x0) * picture.width, (part.y1 - part.y0) * picture.height]
      const scale = Math.min(1, longest / Math.max(wide, high))
      const canvas = plain(wide * scale, high * scale)
      const { data } = draw(canvas, part).getImageData(0, 0, canvas.width, canvas.height)
      return { width: canvas.width, height: canvas.height, data }
    },
    close: () => picture.close(),
  }
}

/**
 * A picture drawn anew through a canvas: upright, its longest side 1280 px at most, with nothing of what a camera writes
 * beside it, its place least of all. Rejects where the file is no picture that this browser reads.
 */
export async function drawnAnew(file: Blob): Promise<Blob> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' })
  try {
    const scale = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height))
    const canvas = plain(picture.width * scale, picture.height * scale)
    const context = canvas.getContext('2d', { alpha: false })
    if (!context) throw new Error('no canvas')
    context.imageSmoothingQuality = 'high'
    context.drawImage(picture, 0, 0, canvas.width, canvas.height)
    return await new Promise<Blob>((resolve, reject) => {
      canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('not drawn'))), TYPE, QUALITY)
    })
  } finally {
    picture.close()
  }
}
