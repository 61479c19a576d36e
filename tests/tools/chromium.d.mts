export const CHROMIUM_ARGS: string[]
export function findChromium(): string | null
export function ensureChromium(): string
export function ensureShell(): string
