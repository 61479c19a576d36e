import type { LateWords } from '../../../words/late.ts'
import { useLateWords } from '../../late-words.ts'

export type EndWords = LateWords['end']

/** Words of the end of a sitting. */
export const useEndWords = (): EndWords => useLateWords().end
