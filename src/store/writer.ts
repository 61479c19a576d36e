import { update } from 'idb-keyval'
import type { Database } from '../../shared/database.ts'

const LETTERS = 'abcdefghijklmnopqrstuvwxyz0123456789'
/** 36^8 is 2.8e12: ten thousand openings on one phone collide with a chance of 2e-5. */
const LENGTH = 8
/** The largest multiple of 36 in a byte: beyond it some letters would be likelier. */
const FAIR_BYTES = 252

/** Random letters and digits, all equally likely. */
function randomName(): string {
  let name = ''
  while (name.length < LENGTH) {
    for (const byte of crypto.getRandomValues(new Uint8Array(1)))
      if (byte < FAIR_BYTES) name += LETTERS[byte % LETTERS.length]
  }
  return name
}

/** A damaged one would be in no record. */
const isName = (name: unknown): name is string => typeof name === 'string' && /^[a-z0-9]{1,32}$/.test(name)

/** Storage that does not answer is not waited for longer. */
const ANSWER_MS = 2500

/**
 * A writer's name: this phone's, then one for this opening. So tabs never give out the same id, a record's
 * key is fixed before it is written, and writing it again is harmless. Never rejects: without storage the phone has
 * a new name each time, which harms nothing. `known` is its name where the database was lost: that does not make it
 * another phone.
 */
export async function nameWriter(database: Database, known?: string): Promise<string> {
  let phone = isName(known) ? known : randomName()
  const named = update<unknown>(
    'phone',
    (kept) => {
      if (isName(kept)) phone = kept
      return phone
    },
    database.store('local'),
  ).catch(() => {})
  await Promise.race([named, new Promise((resolve) => setTimeout(resolve, ANSWER_MS))])
  return `${phone}.${randomName()}`
}
