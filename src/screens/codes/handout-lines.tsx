import type { BucketFacts, StackFacts } from '../../../shared/nouns.ts'
import { useDesk } from '../desk/desk-app.ts'
import { coverText } from '../text/pot-text.ts'

interface StackLinesProps {
  readonly stack: StackFacts
  readonly buckets: readonly BucketFacts[]
}

/** A stack by its coats, in words. */
export function StackLines({ stack, buckets }: StackLinesProps) {
  const { words, formats } = useDesk()
  const nameOf = (bucketId: string) => buckets.find((facts) => facts.bucketId === bucketId)?.name ?? bucketId
  return (
    <section class="codes-stack figures">
      <h2>{stack.name}</h2>
      <ol>
        {stack.coats.map(({ bucketId, cover, holdS }, i) => (
          <li key={i}>
            <strong>{nameOf(bucketId)}</strong> {coverText(words.value, formats.value, cover)},{' '}
            {words.value.bench.seconds(holdS)}
          </li>
        ))}
      </ol>
    </section>
  )
}
