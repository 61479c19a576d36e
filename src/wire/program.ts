/** Opens everything once, in the order in which a phone can bear it, and hands each room what it needs of the others. */

import { computed, effect, signal, untracked } from '@preact/signals'
import type { Faults } from '../device/faults.ts'
import { inDemo, lastSeen } from '../device/seen.ts'
import type { App } from '../screens/app.ts'
import { forgetShort } from '../store/index.ts'
import { isQuiet } from '../table/card/quiet.ts'
import { fetched } from '../ui/fetched.ts'
import { WORDS } from '../words/bench.ts'
import { formats } from '../words/format.ts'
import { tagOf, voiceOf } from '../words/languages.ts'
import { openAttending } from './attending.ts'
import { bindBench } from './bench-hits.ts'
import { watchJumps } from './clock-set.ts'
import { openDevices } from './devices.ts'
import type { OpenedExtras } from './extras.ts'
import { openHealth } from './health.ts'
import { openHits } from './hits.ts'
import type { Late } from './late.ts'
import { openMoment } from './moment.ts'
import { openBar } from './press-bar.ts'
import { openRecords } from './records.ts'
import { openRoute } from './route.ts'
import { openUpdating } from './updating.ts'

/** The first card is drawn before the sound is fetched, if no hit asked for it earlier. */
const SOUND_AFTER_MS = 1500
/** The bench is up: the second copy is compared with what was opened. */
const COPY_AFTER_MS = 3000
/** Packed at a quiet start, so that the next one reads fast. */
const TIDY_AFTER_MS = 20_000
/** So long is the sound alone with the phone before ringing, knocks and names come. */
const EXTRAS_AFTER_MS = 600

/** Whether the phone tells the time by twelve hours; asking takes a slow one a tenth of a second. */
const tellsBy12 = () =>
  new Intl.DateTimeFormat(undefined, { hour: 'numeric' }).resolvedOptions().hour12 === true

/** Opens the phone and the journal and ties every room to every other. */
export async function openProgram(faults: Faults): Promise<App> {
  const fault: App['fault'] = (where, error) => faults.note(where, error)
  const devices = openDevices()
  const { clock } = devices
  const sounding = fetched(async () => (await import('./sounding.ts')).openSounding(devices))
  const demo = inDemo()
  const used = lastSeen() !== undefined
  const records = await openRecords(demo ? 'demo' : 'own', used)
  const { table, journal } = records
  const jumps = watchJumps(records, clock)
  const moment = openMoment(table, clock, jumps)
  const { now, card, seen } = moment
  records.follow(moment.tick, (error) => fault('records', error))
  const { health, patch } = openHealth(records, devices, sounding, demo)
  // Of the settings alone: a hit, which changes the table, makes no words and no formats anew.
  const settings = computed(() => table.value.settings)
  const words = computed(() => WORDS[settings.value.language])
  const formatted = computed(() => {
    const { units, language } = settings.value
    return formats(words.value, units, tagOf(language), tellsBy12)
  })
  const noPots = Object.keys(table.value.pots).length === 0
  const route = openRoute(noPots ? { at: 'first' } : { at: 'bench' })
  const extras = signal<OpenedExtras | undefined>(undefined)

  const quiet = () => document.visibilityState === 'visible' && isQuiet(card.peek(), table.peek(), now.peek())
  const updating = openUpdating(quiet, patch)
  const afterHit = () => extras.peek()?.caller.afterHit()
  const hits = openHits({ records, moment, jumps, devices, sounding, fault, afterHit })
  const away = openAttending(records, hits, devices, jumps, (atMs) => {
    updating.check(atMs)
    moment.tick()
  })
  const bench = openBar({
    hits,
    moment,
    away,
    extras,
    atBench: () => route.peek().at === 'bench',
    hush: () => sounding.with(({ sound }) => sound.hush()),
  })

  sounding.with((opened) => {
    const lent = { devices, sounding: opened, database: journal.database, table, now, card, route, bench }
    const open = async () => (await import('./extras.ts')).openExtras({ ...lent, words, formats: formatted })
    const opening = fetched(async () => (extras.value = await open()))
    setTimeout(opening.ask, EXTRAS_AFTER_MS)
    effect(() => {
      if (!opened.here.value) extras.value?.caller.elsewhere()
    })
    effect(() => opened.use(table.value.settings.sound, voiceOf(table.value.settings)))
    moment.hear(opened.sound.saying)
    effect(() => {
      const shows = route.value.at === 'bench' && !away.at.value && !bench.sheet.value
      opened.tell({ table: seen.value, now: now.value, card: card.value, shows }, extras.value?.caller)
    })
  })
  setTimeout(sounding.ask, SOUND_AFTER_MS)
  const copying = fetched(() => import('./rescue.ts'))
  copying.with(({ keepCopy }) => {
    keepCopy(journal, patch)
    // Asked of a phone in use while nobody waits for it: the first time of day costs most.
    if (used) setTimeout(tellsBy12)
    setTimeout(() => {
      if (quiet() && !journal.readOnly) journal.tidy().catch(() => {})
    }, TIDY_AFTER_MS)
  })
  // Nothing of the demo goes beside the own table's.
  if (!demo) setTimeout(copying.ask, COPY_AFTER_MS)
  else if (journal.records.length === 0) {
    const { layDemo } = await import('../table/decide/demo.ts')
    // A database that answers late is read late: laid then.
    effect(() => {
      if (records.unread.value || journal.records.length > 0) return
      untracked(() => hits.act({ do: 'lay-demo' }, undefined, layDemo))
      route.value = { at: 'bench' }
    })
  }

  const parts = { journal, table, faults, demo, patch, now: () => clock.epochMs() }
  /** Does what is asked for once in a while: its code is fetched then. */
  const late = async <Done>(asked: (late: Late) => Promise<Done>): Promise<Done> =>
    asked((await import('./late.ts')).openLate(parts))
  const no = () => false

  return {
    table: seen,
    now,
    frameNow: moment.frameNow,
    card,
    elsewhere: moment.elsewhere,
    potter: moment.potter,
    schedule: moment.schedule,
    scheduleOptions: moment.scheduleOptions,
    health,
    away: away.at,
    route,
    words,
    formats: formatted,
    extras,
    bench,
    act: hits.act,
    proposeLoad: (input, first) => late((it) => it.proposeLoad(input, first)),
    go: (to) => {
      route.value = to
    },
    demo,
    tryDemo: () => late((it) => it.tryDemo()).catch(no),
    leaveDemo: () => late((it) => it.leaveDemo()).catch(no),
    attachBench(root) {
      records.fetchWalls()
      for (const part of [moment.judging, hits.setting, sounding]) part.ask()
      return bindBench(root, bench, sounding)
    },
    passSheets: () => late((it) => it.passSheets()),
    backUp: () => late((it) => it.backUp()),
    lookInto: (file) => late((it) => it.lookInto(file)),
    asks: () => late((it) => it.asks()),
    hear: (keys) => late((it) => it.hear(keys)),
    copyPutOff: (now) => late((it) => it.copyPutOff(now)),
    passing: () => late((it) => it.passing()),
    photos: () => late((it) => it.photos()),
    drafts: () => late((it) => it.drafts()),
    retrySave: () => journal.retry(),
    fault,
    passOnFaults: () => late((it) => it.passOnFaults()),
    noted() {
      patch({ lost: 0, recovered: 0, fellBack: false })
      if (!demo) forgetShort()
    },
    applyUpdate: updating.apply,
    install: () => void devices.install.prompt(),
  }
}
