/** Which browser this is, as far as its way of running in the background goes: another version is another browser. */

const KINDS: readonly (readonly [RegExp, string])[] = [
  [/\b(?:Firefox|FxiOS)\/(\d+)/, 'Firefox'],
  [/\bEdgA?\/(\d+)/, 'Edge'],
  [/\bSamsungBrowser\/(\d+)/, 'Samsung'],
  [/\b(?:Chrome|CriOS)\/(\d+)/, 'Chrome'],
  [/\bVersion\/(\d+(?:\.\d+)?)/, 'Safari'],
]

/** Name and version from the user agent, and whether the app runs from the home screen. */
export function browserOf(userAgent: string, installed: boolean): string {
  for (const [pattern, name] of KINDS) {
    const version = pattern.exec(userAgent)?.[1]
    if (version) return `${name} ${version}${installed ? ' installed' : ''}`
  }
  return `unknown${installed ? ' installed' : ''}`
}

export const thisBrowser = (): string =>
  browserOf(navigator.userAgent, matchMedia('(display-mode: standalone)').matches)
