import type { Leaf } from './leaves.mjs'

export type Folder = ReadonlyMap<string, string>
export interface Text extends Leaf {
  readonly file: string
  readonly key: string
}
export function textsOf(folder: Folder): Text[]
export function tallyOf(
  code: string,
  english: Folder,
  folder: Folder,
): { readonly texts: number; readonly english: number; readonly alone: readonly string[] }
