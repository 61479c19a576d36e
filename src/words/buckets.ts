import { buckets } from './en/buckets.ts'
import { byLanguage } from './languages.ts'

/** Words of the buckets, by language: most screens do without. */
export const BUCKET_WORDS = byLanguage<typeof buckets>(buckets, (all) => all.buckets)
