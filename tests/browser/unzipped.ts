import yauzl from 'yauzl'

/** Files of a zip by name, read by a reader that shares no code with the writer. */
export async function unzipped(path: string): Promise<Map<string, Buffer>> {
  const zip = await yauzl.openPromise(path)
  const files = new Map<string, Buffer>()
  for await (const entry of zip.eachEntry()) {
    const chunks: Buffer[] = []
    for await (const chunk of await zip.openReadStreamPromise(entry)) chunks.push(chunk as Buffer)
    files.set(entry.fileName, Buffer.concat(chunks))
  }
  return files
}
