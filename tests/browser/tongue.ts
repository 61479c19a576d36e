import type { Page } from '@playwright/test'
import { openWords } from '../fixtures/languages.ts'
import { everyText } from '../fixtures/texts.ts'

// Here and not when first wanted: what loads a story may be closed by then. A phone is still taken to speak English.
await openWords('es', 'en')

/** Stories are told in English; on a page that speaks Spanish what they look for and what they read is turned. */
const spanish = new WeakSet<Page>()

/** From now on the page's words are Spanish; its phone speaks it. */
export function speakSpanish(page: Page): void {
  spanish.add(page)
}

let known: readonly (readonly [en: string, es: string])[] | undefined
/** Every text in both languages; what is said in just these words comes before what can be filled with them. */
function pairs() {
  if (known) return known
  const numbered = (n: number) => `fact-${n}-`
  const es = new Map(everyText('es', numbered))
  const factsIn = ([en]: readonly [string, string]) => en.match(FACT)?.length ?? 0
  // Refusals are filled by name, and no story looks for one.
  known = everyText('en', numbered)
    .filter(([path]) => !path.includes('refusal'))
    .map(([path, en]) => [en, es.get(path) ?? en] as const)
    .sort((a, b) => factsIn(a) - factsIn(b))
  return known
}

const FACT = /fact-\d+-/g

/** `text` in the other language, where all of it is one text, whatever facts are in it. */
function turned(text: string, from: 0 | 1): string | undefined {
  for (const pair of pairs()) {
    const facts: readonly string[] = pair[from].match(FACT) ?? []
    const pattern = pair[from]
      .split(FACT)
      .map((part) => part.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&'))
      .join('(.+)')
    const found = new RegExp(`^${pattern}$`).exec(text)
    // A text of facts alone answers to anything.
    if (found && /[a-z]/i.test(pair[from].replaceAll(FACT, '')))
      return pair[1 - from]?.replaceAll(FACT, (fact) => found[1 + facts.indexOf(fact)] ?? fact)
  }
  return undefined
}

/** What the page says for an English text, for the beginning of one, or for words of several; a pattern stays as it is. */
export function said(page: Page, english: string | RegExp): string | RegExp {
  if (!spanish.has(page) || typeof english !== 'string') return english
  const whole = (text: string) => turned(text, 0) ?? turned(text.toLowerCase(), 0)?.toUpperCase()
  const part = pairs().find(([en]) => en.startsWith(english))
  const words = () => english.split(' ').map((word) => whole(word) ?? word)
  return whole(english) ?? part?.[1] ?? words().join(' ')
}

/** The English of what was read off the page. */
export const heard = (page: Page, text: string): string =>
  spanish.has(page) ? (turned(text, 1) ?? text) : text
