import { createHash } from 'node:crypto'
import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'

const ENTRY = /\{"integrity":"sha256-[^"]+","url":"([^"]+)"\}/g

/** The worker's list of files, as text. */
const entry = (url: string, content: string) =>
  `{"integrity":"sha256-${createHash('sha256').update(content).digest('base64')}","url":"${url}"}`

/** Puts out a version in which these files are others. `listed`: the worker says so too. */
export async function deploy(
  folder: string,
  files: Readonly<Record<string, string>>,
  listed: Readonly<Record<string, string>> = files,
): Promise<void> {
  for (const [name, content] of Object.entries(files)) await writeFile(join(folder, name), content)
  const path = join(folder, 'sw.js')
  const worker = await readFile(path, 'utf8')
  const old = new Set([...worker.matchAll(ENTRY)].map(([, url]) => url))
  const added = Object.entries(listed).filter(([url]) => !old.has(url))
  const changed = worker
    .replace(ENTRY, (same, url: string) => {
      const content = listed[url]
      return content === undefined ? same : entry(url, content)
    })
    .replace(ENTRY, (first, _url, at: number) =>
      at === worker.search(ENTRY) ? [first, ...added.map((file) => entry(...file))].join() : first,
    )
  if (Object.keys(listed).length > 0 && changed === worker) throw new Error('the worker lists none of them')
  await writeFile(path, changed)
}
