import type { AnyEvent, JournalRecord } from '../../shared/record.ts'
import { type ContentCheck, type Knowledge, marked } from './marks.ts'
import { asideKey, type Sorted } from './quarantine.ts'
import { inSlices } from './slices.ts'

/** Records whose contents no schema has looked at yet: those that pass are taken, the others set aside with the reason. */
export async function settleDoubts<E extends AnyEvent>(
  sorted: Sorted<E>,
  { content, schema }: Knowledge,
): Promise<Sorted<E>> {
  const fault: ContentCheck = await content()
  const records = [...sorted.records]
  const out = [...sorted.out]
  const back = [...sorted.back]
  const aside = [...sorted.aside]
  const passed: JournalRecord<E>[] = []
  await inSlices(sorted.doubts, ({ key, record, value, from }) => {
    const field = fault(record.event)
    if (field === undefined) {
      records.push(record)
      if (from === 'journal') passed.push(record)
      if (from === 'quarantine') back.push({ from: key, to: record.id, value: marked(record, schema) })
      return
    }
    const to = from === 'quarantine' ? key : asideKey(`content.${schema}.${field}`, record.id, value)
    aside.push({ key: to, reason: 'content', value })
    if (from === 'journal') out.push({ from: key, to, value })
  })
  return { ...sorted, doubts: [], records, out, back, aside, passed }
}
