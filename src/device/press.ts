/**
 * When is a touch a hit? Knuckles are slow and wide, drops come in showers and palms in groups.
 * One pure reducer over pointer facts; `press-binding.ts` feeds it from the page.
 */

import type { Intent, PointerFact, PressTarget, RefusalCode, TouchRefusal } from './press-facts.ts'
import {
  AGAIN_MS,
  CARD_MS,
  FORGET_MS,
  HOLD_MS,
  LOCK_MS,
  MANY_CONTACTS,
  MM_PER_PX,
  PALM_MM,
  REST_MS,
  SAME_KNUCKLE_MM,
  SHOWER_CONTACTS,
  SHOWER_MS,
  SLIDE_MM,
  SPREAD_CONTACTS,
  SPREAD_MM,
  SPREAD_MS,
  TOGETHER_MS,
} from './press-facts.ts'

interface Contact {
  readonly id: number
  readonly atMs: number
  readonly xPx: number
  readonly yPx: number
}

interface Candidate extends Contact {
  readonly target: PressTarget
}

export interface PressState {
  readonly contacts: readonly Contact[]
  readonly candidate: Candidate | null
  readonly recent: readonly Contact[]
  /** The hand on the glass was refused; nothing counts until all of it is off. */
  readonly spoiled: boolean
  readonly lockedUntilMs: number
  readonly hitMs: number
  readonly cardMs: number
}

export interface PressStep {
  readonly state: PressState
  readonly intent?: Intent
  readonly refusal?: TouchRefusal
}

export const restingPress: PressState = {
  contacts: [],
  candidate: null,
  recent: [],
  spoiled: false,
  lockedUntilMs: -Infinity,
  hitMs: -Infinity,
  cardMs: -Infinity,
}

const SILENT: ReadonlySet<RefusalCode> = new Set(['again', 'card', 'short', 'slid', 'locked'])

/** One fact in, the next state out, with at most one intent or refusal. */
export function press(state: PressState, fact: PointerFact): PressStep {
  switch (fact.kind) {
    case 'card':
      return { state: { ...state, cardMs: fact.atMs } }
    case 'down':
      return down(state, fact)
    case 'move':
      return move(state, fact)
    case 'up':
      return up(state, fact)
    case 'time':
      return holdDue(state, fact.atMs)
    case 'cancel': {
      const after = lift(state, fact.id)
      return state.candidate?.id === fact.id ? refuse(after, 'cancelled', fact.atMs) : { state: after }
    }
  }
}

type Down = Extract<PointerFact, { kind: 'down' }>
type MoveOrUp = Extract<PointerFact, { kind: 'move' | 'up' }>

function down(state: PressState, fact: Down): PressStep {
  const contact: Contact = { id: fact.id, atMs: fact.atMs, xPx: fact.xPx, yPx: fact.yPx }
  const earlier = state.contacts.filter((c) => c.id !== fact.id && fact.atMs - c.atMs < FORGET_MS)
  const contacts = [...earlier, contact]
  const recent = [...state.recent.filter((c) => fact.atMs - c.atMs < SHOWER_MS), contact]
  const spoiled = state.spoiled && earlier.length > 0
  const candidate = earlier.some((c) => c.id === state.candidate?.id) ? state.candidate : null
  const next: PressState = { ...state, contacts, recent, spoiled, candidate }

  if (fact.atMs < state.lockedUntilMs) return refuse(next, 'locked', fact.atMs)
  if (isShower(recent, fact.atMs)) {
    return refuse({ ...next, recent: [], lockedUntilMs: fact.atMs + LOCK_MS }, 'splash', fact.atMs)
  }
  if (spoiled) return { state: next }
  if (contacts.length >= MANY_CONTACTS) return refuse(next, 'many', fact.atMs)
  const stranger = earlier.find(
    (c) => fact.atMs - c.atMs < TOGETHER_MS && distanceMm(c, contact) > SAME_KNUCKLE_MM,
  )
  if (stranger && (candidate || fact.target)) return refuse(next, 'elsewhere', fact.atMs)
  if (candidate || !fact.target) return { state: next }
  if (isPalm(fact)) return refuse(next, 'palm', fact.atMs)
  return { state: { ...next, candidate: { ...contact, target: fact.target } } }
}

function move(state: PressState, fact: MoveOrUp): PressStep {
  if (state.candidate?.id !== fact.id) return { state }
  if (isPalm(fact)) return refuse(state, 'palm', fact.atMs)
  return hasSlid(state.candidate, fact) ? refuse(state, 'slid', fact.atMs) : { state }
}

function up(state: PressState, fact: MoveOrUp): PressStep {
  const after = lift(state, fact.id)
  const candidate = state.candidate
  if (candidate?.id !== fact.id) return { state: after }
  const heldMs = fact.atMs - candidate.atMs
  if (isPalm(fact)) return refuse(after, 'palm', fact.atMs)
  if (hasSlid(candidate, fact)) return refuse(after, 'slid', fact.atMs)
  if (candidate.target.kind === 'hold') return refuse(after, 'short', fact.atMs)
  if (heldMs > REST_MS) return refuse(after, 'rested', fact.atMs)
  const holdMs = candidate.target.holdMs
  return hit(after, candidate, fact.atMs, holdMs !== undefined && heldMs >= holdMs ? 'hold' : 'press')
}

function holdDue(state: PressState, atMs: number): PressStep {
  const candidate = state.candidate
  const holdMs = candidate && holdMsOf(candidate.target)
  if (candidate?.target.kind !== 'hold' || holdMs === null || atMs < candidate.atMs + holdMs) return { state }
  return hit({ ...state, candidate: null, spoiled: true }, candidate, atMs, 'hold')
}

function hit(state: PressState, candidate: Candidate, atMs: number, by: Intent['by']): PressStep {
  if (candidate.atMs - state.hitMs < AGAIN_MS) return refuse(state, 'again', atMs)
  if (candidate.atMs - state.cardMs < CARD_MS) return refuse(state, 'card', atMs)
  const intent: Intent = {
    target: candidate.target,
    atMs: by === 'hold' && candidate.target.kind === 'bar' ? atMs : candidate.atMs,
    heldMs: atMs - candidate.atMs,
    by,
  }
  return { state: { ...state, hitMs: atMs }, intent }
}

/** How long this target is held for its other meaning, ms; null if it has none. */
export function holdMsOf(target: PressTarget): number | null {
  return target.holdMs ?? (target.kind === 'hold' ? HOLD_MS : null)
}

function refuse(state: PressState, code: RefusalCode, atMs: number): PressStep {
  const spoiled = state.contacts.length > 0
  return { state: { ...state, candidate: null, spoiled }, refusal: { code, atMs, heard: !SILENT.has(code) } }
}

function lift(state: PressState, id: number): PressState {
  const contacts = state.contacts.filter((c) => c.id !== id)
  return {
    ...state,
    contacts,
    candidate: state.candidate?.id === id ? null : state.candidate,
    spoiled: state.spoiled && contacts.length > 0,
  }
}

const isPalm = (size: { widthPx: number; heightPx: number }): boolean =>
  Math.max(size.widthPx, size.heightPx) * MM_PER_PX > PALM_MM

/** On the bar a contact may roll as far as it likes while it stays on the bar. */
const hasSlid = (from: Candidate, to: MoveOrUp): boolean =>
  distanceMm(from, to) > SLIDE_MM && !(from.target.kind === 'bar' && to.over)

function isShower(recent: readonly Contact[], atMs: number): boolean {
  if (recent.length >= SHOWER_CONTACTS) return true
  const last = recent.filter((c) => atMs - c.atMs < SPREAD_MS)
  if (last.length < SPREAD_CONTACTS) return false
  return last.some((a) => last.some((b) => distanceMm(a, b) > SPREAD_MM))
}

function distanceMm(a: { xPx: number; yPx: number }, b: { xPx: number; yPx: number }): number {
  return Math.hypot(a.xPx - b.xPx, a.yPx - b.yPx) * MM_PER_PX
}
