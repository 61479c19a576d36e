import type { Folder } from './texts.mjs'

export function freshFolder(code: string, english: Folder): Map<string, string>
export function withLanguage(source: string, code: string): string
