import type { Caution } from '../../../shared/nouns.ts'
import { knew, type Placed, placed } from './knew.ts'
import type { Meeting, Written } from './seen.ts'

/**
 * What events become, asked in their order: a bucket set anew with the cautions of every word on it that whoever set it had not read: a caution
 * that one phone knows stays until somebody who knows of it takes it off.
 */
export function withCautions(
  met: readonly Meeting[],
  stands: (stamped: Written) => boolean,
): (stamped: Written) => Written {
  const said = new Map<string, (Placed & { readonly cautions: readonly Caution[] })[]>()
  return (stamped) => {
    const { event } = stamped
    if (event.kind !== 'bucket-set' || !stands(stamped)) return stamped
    const { bucket } = event
    const word = placed(stamped)
    const before = said.get(bucket.bucketId) ?? []
    const unread = before.filter((other) => !knew(met, word, other)).flatMap(({ cautions }) => cautions)
    const cautions = [...new Set([...bucket.cautions, ...unread])]
    said.set(bucket.bucketId, [...before, { ...word, cautions }])
    return unread.length > 0 ? { ...stamped, event: { ...event, bucket: { ...bucket, cautions } } } : stamped
  }
}
