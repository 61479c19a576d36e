import type { Folder } from './texts.mjs'

export interface Taken {
  readonly changed: Map<string, string>
  readonly texts: number
  readonly left: readonly string[]
  readonly wrong: readonly string[]
}
export function writePo(code: string, english: Folder, folder: Folder): string
export function readPo(text: string, code: string, english: Folder, folder: Folder): Taken
