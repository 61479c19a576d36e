import { photo } from './en/photo-outline.ts'
import { byLanguage } from './languages.ts'

/** Words of the outline off a photo, by language: no other screen waits for them. */
export const PHOTO_WORDS = byLanguage<typeof photo>(photo, (all) => all.photo)
