import type { Hands, PlanInput, Pot } from '../types.ts'

/** A week: longer sittings are a slip of the caller (minutes given as seconds squared, epoch in ms). */
const LONGEST_S = 7 * 86_400
/** Ample for any table; keeps the arrays and the work bounded. */
const MOST_POTS = 400

function whole(name: string, value: number, least: number, most: number): void {
  if (!Number.isInteger(value) || value < least || value > most)
    throw new RangeError(`${name} is ${value}, allowed are whole seconds from ${least} to ${most}`)
}

function unique(name: string, ids: readonly string[]): void {
  if (new Set(ids).size !== ids.length) throw new RangeError(`${name} holds an id twice: ${ids.join(' ')}`)
}

function checkPot(input: PlanInput, pot: Pot, bucketIds: ReadonlySet<string>): void {
  const at = `pots[${pot.id}]`
  const near = (name: string, value: number) =>
    whole(`${at}.${name}`, value, input.nowS - 10 * LONGEST_S, input.nowS + LONGEST_S)
  near('readyAtS', pot.readyAtS)
  if (pot.overLongAtS !== undefined) near('overLongAtS', pot.overLongAtS)
  whole(`${at}.kilnDryS`, pot.kilnDryS, 0, LONGEST_S)
  for (const step of pot.prep) {
    whole(`${at}.prep.activeS`, step.activeS, 0, LONGEST_S)
    whole(`${at}.prep.waitAfterS`, step.waitAfterS, 0, LONGEST_S)
  }
  if (pot.coats.length < 1 || pot.coats.length > 20)
    throw new RangeError(`${at}.coats.length is ${pot.coats.length}, allowed are 1 to 20`)
  for (const coat of pot.coats) {
    if (!bucketIds.has(coat.bucketId))
      throw new RangeError(
        `${at}.coats.bucketId is ${coat.bucketId}, allowed are ${[...bucketIds].join(' ')}`,
      )
    whole(`${at}.coats.dipS`, coat.dipS, 1, 86_400)
    whole(`${at}.coats.outAtS`, coat.outAtS, 0, coat.dipS)
    whole(`${at}.coats.waitAfterS`, coat.waitAfterS, 0, LONGEST_S)
    if (coat.longestWaitS !== undefined)
      whole(`${at}.coats.longestWaitS`, coat.longestWaitS, 0, 10 * LONGEST_S)
  }
}

function checkHands(input: PlanInput, hands: Hands, potter: number, bucketIds: ReadonlySet<string>): void {
  whole(`hands[${potter}].freeAtS`, hands.freeAtS, input.nowS, input.nowS + LONGEST_S)
  if (hands.open === null) return
  if (!bucketIds.has(hands.open.bucketId))
    throw new RangeError(
      `hands[${potter}].open.bucketId is ${hands.open.bucketId}, allowed are ${[...bucketIds].join(' ')}`,
    )
  whole(`hands[${potter}].open.stirEndS`, hands.open.stirEndS, input.nowS - 10 * LONGEST_S, hands.freeAtS)
}

/** Refuses what the planner can't mean. @throws RangeError naming field, value and allowed range. */
export function checkInput(input: PlanInput): void {
  whole('nowS', input.nowS, -1e12, 1e12)
  whole('seed', input.seed, 0, 0xffff_ffff)
  if (input.pots.length > MOST_POTS)
    throw new RangeError(`pots.length is ${input.pots.length}, allowed are 0 to ${MOST_POTS}`)
  if (input.hands.length < 1 || input.hands.length > 2)
    throw new RangeError(`hands.length is ${input.hands.length as number}, allowed are 1 to 2`)
  unique(
    'buckets',
    input.buckets.map((bucket) => bucket.id),
  )
  unique(
    'pots',
    input.pots.map((pot) => pot.id),
  )
  for (const bucket of input.buckets) {
    whole(`buckets[${bucket.id}].openS`, bucket.openS, 0, 86_400)
    whole(`buckets[${bucket.id}].restirS`, bucket.restirS, 0, 86_400)
    whole(`buckets[${bucket.id}].freshS`, bucket.freshS, 0, LONGEST_S)
    whole(`buckets[${bucket.id}].decantS`, bucket.decantS, 0, 86_400)
  }
  const bucketIds = new Set(input.buckets.map((bucket) => bucket.id))
  for (const pot of input.pots) checkPot(input, pot, bucketIds)
  input.hands.forEach((hands, potter) => {
    checkHands(input, hands, potter, bucketIds)
  })
  const [first, second] = input.hands
  if (second?.open && first.open?.bucketId === second.open.bucketId)
    throw new RangeError(
      `hands[1].open.bucketId is ${second.open.bucketId}, allowed is a bucket the other hands have not open`,
    )
  if (input.deadline) {
    whole(
      'deadline.loadStartS',
      input.deadline.loadStartS,
      input.nowS - LONGEST_S,
      input.nowS + 4 * LONGEST_S,
    )
    if (input.deadline.doneDryAtS !== undefined)
      whole(
        'deadline.doneDryAtS',
        input.deadline.doneDryAtS,
        input.nowS - 10 * LONGEST_S,
        input.nowS + 4 * LONGEST_S,
      )
  }
}

/** Ample for any search; keeps a slip of the caller from running for ever. */
const MOST_WORK = 1_000_000_000

/** @throws RangeError naming value and allowed range. */
export function checkWork(work: number): void {
  if (!Number.isInteger(work) || work < 0 || work > MOST_WORK)
    throw new RangeError(`work is ${work}, allowed are whole numbers of steps timed from 0 to ${MOST_WORK}`)
}
