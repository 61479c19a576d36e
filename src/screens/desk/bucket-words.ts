import { BUCKET_WORDS } from '../../words/buckets.ts'
import { useApp } from '../app.ts'

/** Words of the buckets, which most screens do without. */
export const useBucketWords = () => BUCKET_WORDS[useApp().table.value.settings.language]
