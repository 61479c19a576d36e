import type { Language } from './bench.ts'
import { photo } from './en/photo-outline.ts'

/** Words of the outline off a photo, by language: no other screen waits for them. */
export const PHOTO_WORDS = { en: photo } satisfies Record<Language, typeof photo>
