import { add } from './add.ts'
import { back } from './back.ts'
import { between } from './between.ts'
import { broken } from './broken.ts'
import { buckets } from './buckets.ts'
import { cards } from './cards.ts'
import { cool } from './cool.ts'
import { desk } from './desk.ts'
import { deskRefusal } from './desk-refusals.ts'
import { end } from './end.ts'
import { fire } from './fire.ts'
import { front } from './front.ts'
import { help } from './help.ts'
import { kiln } from './kiln.ts'
import { kilnCare } from './kiln-care.ts'
import { kilnForm } from './kiln-form.ts'
import { kilnPages } from './kiln-pages.ts'
import { look } from './look.ts'
import { meeting } from './meeting.ts'
import { opening } from './opening.ts'
import { other } from './other.ts'
import { passing } from './passing.ts'
import { photo } from './photo-outline.ts'
import { room } from './room.ts'
import { sheets } from './sheets.ts'
import { trouble } from './trouble.ts'
import { waits } from './waits.ts'
import { warned } from './warned.ts'
import { which } from './which.ts'
import { why } from './why.ts'

const bench = { ...cards, bench: { ...cards.bench, ...waits } }
const late = { ...other, ...warned, between, end, why }

/** All of English in one: the shapes that every other language has, and is fetched in. */
export const words = {
  add,
  front,
  bench,
  late,
  desk: { ...bench, ...late, desk, refusal: { ...bench.refusal, ...deskRefusal } },
  back,
  broken,
  buckets,
  cool,
  fire,
  help,
  kilnCare,
  kilnForm,
  kilnPages,
  kiln,
  look,
  meeting,
  opening,
  passing,
  photo,
  room,
  sheets,
  trouble,
  which,
}

export type AllWords = typeof words
