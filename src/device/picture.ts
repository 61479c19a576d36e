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

const [SOI, SOS, EOI] = [0xd8, 0xda, 0xd9]
/** Segments that a canvas writes: quantization, frame, Huffman tables, restart interval (ITU-T T.81, table B.1), and JFIF's own. */
const BARE: ReadonlySet<number> = new Set([0xdb, 0xc0, 0xc1, 0xc2, 0xc4, 0xdd])
/** Bytes of JFIF's segment without a thumbnail (ITU-T T.871, 10.1). */
const [JFIF, JFIF_LENGTH] = [0xe0, 16]
/** What its colours mean, begun with these letters (ICC.1:2022, B.4). */
const [ICC, ICC_NAME] = [0xe2, 'ICC_PROFILE\0']

/** Whether a JPEG has nothing beside what draws its picture: no place, no comment, no second picture behind it. */
export function isBare(jpeg: Uint8Array): boolean {
  const byte = (i: number) => jpeg[i] ?? 0
  if (byte(0) !== 0xff || byte(1) !== SOI) return false
  let at = 2
  while (at + 1 < jpeg.length) {
    const marker = byte(at + 1)
    if (byte(at) !== 0xff) return false
    if (marker === EOI) return at + 2 === jpeg.length
    const length = byte(at + 2) * 256 + byte(at + 3)
    if (length < 2) return false
    const isColours = () =>
      String.fromCharCode(...jpeg.subarray(at + 4, at + 4 + ICC_NAME.length)) === ICC_NAME
    const isOurs =
      BARE.has(marker) ||
      marker === SOS ||
      (marker === JFIF && length === JFIF_LENGTH) ||
      (marker === ICC && isColours())
    if (!isOurs) return false
    at += 2 + length
    // The picture itself: any 0xff in it has 0 or a restart behind it (ITU-T T.81, B.1.1.5).
    if (marker === SOS)
      while (at < jpeg.length && !(byte(at) === 0xff && byte(at + 1) !== 0 && (byte(at + 1) & 0xf8) !== 0xd0))
        at++
  }
  return false
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
