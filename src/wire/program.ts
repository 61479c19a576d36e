import { batch, computed, effect, signal } from '@preact/signals'
import { isKnownKind, type TableEvent } from '../../shared/events.ts'
import type { JournalRecord } from '../../shared/record.ts'
import type { Sound } from '../device/ports.ts'
import { beSeen, lastSeenMs } from '../device/seen.ts'
import type { Updates } from '../device/update.ts'
import type { App, Away, Health } from '../screens/app.ts'
import { openJournal } from '../store/index.ts'
import { cardOf } from '../table/card/card-now.ts'
import { type Judge, judged } from '../table/card/judged.ts'
import { isQuiet } from '../table/card/quiet.ts'
import { decide } from '../table/decide/decide.ts'
import { doubtfulDips } from '../table/decide/decide-card.ts'
import { fold, step } from '../table/fold/fold.ts'
import { type Potter, potterOf, viewOf } from '../table/model/potters.ts'
import { formats } from '../words/format.ts'
import { WORDS } from '../words/index.ts'
import { bindBench } from './bench-hits.ts'
import { openDevices } from './devices.ts'
import type { OpenedExtras } from './extras.ts'
import { lazy } from './lazy.ts'
import { openPlanning } from './planning.ts'
import { openRoute } from './route.ts'

/** How often what is shown follows the clock; a count follows the screen's own frames. */
const TICK_MS = 250
/** A page nobody saw for this long lists what came due meanwhile. */
const AWAY_MS = 60_000
const SEEN_EVERY_MS = 2000
/** The first visit fetches everything to keep it when the first screen has long been drawn. */
const UPDATES_AFTER_MS = 1500
/** So long is the sound alone with the phone before ringing, knocks and names come. */
const EXTRAS_AFTER_MS = 600

/** Opens the phone and the journal and ties every room to every other. */
export async function openProgram(): Promise<App> {
  const devices = openDevices()
  const { clock, haptics, lifecycle } = devices
  const sounding = lazy(async () => (await import('./sounding.ts')).openSounding(devices))
  const sound = (job: (sound: Sound) => void) => sounding.with((opened) => job(opened.sound))
  const journal = await openJournal<TableEvent>({
    isEvent: (event) => isKnownKind(event.kind),
    content: async () => (await import('../store/events-schema.ts')).contentFault,
  })

  let folded: readonly JournalRecord<TableEvent>[] = journal.records
  const table = signal(fold(folded))
  const timeNow = () => clock.epochMs() - table.peek().skewMs
  const now = signal(timeNow())
  const frameNow = signal(now.peek())
  const { schedule: told, scheduleOptions: ways } = openPlanning(table, now)
  const lane = signal<Potter>(0)
  const seen = computed(() => viewOf(table.value, table.value.settings.potters === 2 ? lane.value : 0))
  const judge = signal<Judge | undefined>(undefined)
  const judging = lazy(async () => {
    // No warning without its words.
    const [part] = await Promise.all([import('../table/card/judge.ts'), import('../screens/bench/late.tsx')])
    judge.value = part.judge
  })
  const card = computed(() =>
    judged(seen.value, cardOf(seen.value, now.value, told.value), now.value, judge.value),
  )
  const away = signal<Away | undefined>(undefined)
  const health = signal<Health>({
    saved: journal.status,
    sound: 'locked',
    awake: devices.awake.state(),
    offlineReady: navigator.serviceWorker?.controller != null,
    update: false,
    readOnly: journal.readOnly,
    quarantined: journal.opening.quarantined.length,
    install: devices.install.state(),
  })
  const patch = (part: Partial<Health>) => {
    health.value = { ...health.value, ...part }
  }
  const words = computed(() => WORDS[table.value.settings.language])
  const formatted = computed(() =>
    formats(words.value, table.value.settings.units, table.value.settings.language),
  )
  const noPots = Object.keys(table.value.pots).length === 0
  const route = openRoute(noPots ? { at: 'first' } : { at: 'bench' })

  const tick = () =>
    batch(() => {
      now.value = timeNow()
      frameNow.value = now.value
    })
  const extras = signal<OpenedExtras | undefined>(undefined)
  sounding.with((opened) => {
    const lent = { devices, sounding: opened, database: journal.database, table, now, card, route }
    const open = async () => (await import('./extras.ts')).openExtras({ ...lent, formats: formatted })
    const opening = lazy(async () => (extras.value = await open()))
    setTimeout(opening.fetch, EXTRAS_AFTER_MS)
  })
  journal.subscribe((change) => {
    switch (change.kind) {
      case 'records':
        batch(() => {
          table.value = change.atEnd ? step(table.peek(), folded, change.records) : fold(journal.records)
          tick()
        })
        folded = journal.records
        break
      case 'status':
        patch({ saved: change.status })
        break
      case 'stale':
        patch({ readOnly: true })
    }
  })

  const setting = lazy(async () => (await import('../table/decide/decide-setup.ts')).decideSetup)
  const act: App['act'] = (action, atMs = clock.pageMs(), more = setting.now()) => {
    const at = Math.round(clock.epochAt(atMs))
    const decision = decide(table.peek(), action, { at, hit: newId(), hands: potterOf(seen.peek()) }, more)
    if ('refusal' in decision) {
      sound((on) => on.refused())
      haptics.feel('refused')
      return decision.refusal
    }
    const before = table.peek()
    try {
      sounding.with((opened) => opened.hit(before, decision.events, atMs))
    } finally {
      // Whatever goes wrong with its sound, the hit is kept.
      journal.append(decision.events, { at, tz: -new Date(at).getTimezoneOffset(), mono: Math.round(atMs) })
    }
    extras.peek()?.caller.afterHit()
    return undefined
  }

  const settleDoubts = (fromMs: number, toMs: number) => {
    const skew = table.peek().skewMs
    for (const dipId of doubtfulDips(table.peek(), fromMs - skew, toMs - skew))
      act({ do: 'dose-unsure', dipId })
  }
  const wasAway = (fromMs: number, toMs: number) => {
    const skew = table.peek().skewMs
    const underWay = Object.values(table.peek().pots).some((pot) => !pot.gone && pot.dips.length > 0)
    if (underWay && toMs - fromMs >= AWAY_MS) away.value = { from: fromMs - skew, to: toMs - skew }
  }

  const startMs = clock.epochMs()
  // A life sign is written late, or not at all when the phone kills the page; the last hit is one too.
  const lastHit = table.peek().hits.at(-1)
  const lastSeen = Math.max(lastSeenMs() ?? 0, lastHit ? lastHit.at + table.peek().skewMs : 0)
  if (lastSeen > 0 && lastSeen < startMs && !journal.readOnly) {
    settleDoubts(lastSeen, startMs)
    wasAway(lastSeen, startMs)
  }
  lifecycle.onWake(({ reason, gapMs, atMs }) => {
    if (reason === 'start') return
    journal.refresh().catch(() => {})
    updates?.check(atMs)
    tick()
    settleDoubts(atMs - gapMs, atMs)
    wasAway(atMs - gapMs, atMs)
  })
  clock.onJump((jump) => {
    if (jump.kind === 'moved') act({ do: 'clock-moved', byMs: Math.round(jump.byMs) })
  })
  devices.awake.onChange((state) => patch({ awake: state }))
  devices.install.onChange((state) => patch({ install: state }))
  sounding.with((opened) => {
    patch({ sound: opened.sound.health() })
    opened.sound.onHealth((state) => patch({ sound: state }))
    effect(() => opened.use(table.value.settings.sound, table.value.settings.spoken))
    effect(() => opened.follow(seen.value, now.value, route.value.at === 'bench', extras.value?.caller))
  })
  setInterval(tick, TICK_MS)
  const lifeSign = () => document.visibilityState === 'visible' && beSeen(clock.epochMs())
  lifeSign()
  setInterval(lifeSign, SEEN_EVERY_MS)
  const counting = computed(() => (card.value.kind === 'count' ? card.value.dip : undefined))
  effect(() => {
    const dip = counting.value
    if (!dip) return
    const turns = [dip.underAt - dip.lowerS * 1000, dip.outAt]
    let frame = requestAnimationFrame(function again() {
      frame = requestAnimationFrame(again)
      const at = timeNow()
      // A hit means something else from IN and from OUT on; between them the numeral alone moves.
      if (turns.some((turn) => now.peek() < turn && at >= turn)) tick()
      else frameNow.value = at
    })
    return () => cancelAnimationFrame(frame)
  })

  let updates: Updates | null = null
  const quiet = () => document.visibilityState === 'visible' && isQuiet(table.peek(), now.peek())
  const lookForUpdates = async () => {
    const { openUpdates } = await import('../device/update.ts')
    updates = await openUpdates({ isQuiet: quiet })
    if (!updates) return
    patch({ update: updates.waiting() })
    updates.onWaiting(() => patch({ update: true }))
    updates.onOfflineReady(() => patch({ offlineReady: true }))
  }
  // With a worker all is on the phone already, and a version that waits is best taken on at once.
  const kept = navigator.serviceWorker?.controller != null
  setTimeout(sounding.fetch, UPDATES_AFTER_MS)
  setTimeout(() => void lookForUpdates().catch(() => {}), kept ? 0 : UPDATES_AFTER_MS)

  return {
    table: seen,
    now,
    frameNow,
    card,
    potter: lane,
    schedule: told,
    scheduleOptions: ways,
    health,
    away,
    route,
    words,
    formats: formatted,
    extras,
    act,
    refused: () => sound((on) => on.refused()),
    hush: () => sound((on) => on.hush()),
    go: (to) => {
      route.value = to
    },
    async layDemo() {
      const { layDemo } = await import('../table/decide/demo.ts')
      act({ do: 'lay-demo' }, undefined, layDemo)
      route.value = { at: 'bench' }
    },
    back: () => {
      away.value = undefined
    },
    attachBench(root, onHit) {
      for (const part of [judging, setting, sounding]) part.fetch()
      return bindBench(root, onHit, sounding)
    },
    backUp: async () => (await import('./backup.ts')).backUp(journal, clock.epochMs()),
    takeIn: async (text) => (await import('./backup.ts')).takeIn(journal, text, clock.epochMs()),
    retrySave: () => journal.retry(),
    applyUpdate: () => void updates?.apply(),
    install: () => void devices.install.prompt(),
  }
}

const newId = (): string => crypto.randomUUID().slice(0, 13)
