/** Longest side of a kept picture, px: enough to see crawling by, and a tenth of what a camera gives. */
const LONGEST_PX = 1280
const TYPE = 'image/jpeg'
const QUALITY = 0.82

/**
 * A picture drawn anew through a canvas: upright, its longest side 1280 px at most, with nothing of what a camera writes
 * beside it, its place least of all. Rejects where the file is no picture that this browser reads.
 */
export async function drawnAnew(file: Blob): Promise<Blob> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' })
  try {
    const scale = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height))
    const canvas = document.createElement('canvas')
    canvas.width = Math.max(1, Math.round(picture.width * scale))
    canvas.height = Math.max(1, Math.round(picture.height * scale))
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
