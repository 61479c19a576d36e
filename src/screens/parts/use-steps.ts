import { useEffect, useState } from 'preact/hooks'

/** What a generator comes to, a step at a time between frames; undefined until then. Begun anew when `of` changes. */
export function useSteps<Answer>(
  begin: () => Generator<void, Answer>,
  of: readonly unknown[],
): Answer | undefined {
  const [answer, setAnswer] = useState<Answer>()
  useEffect(() => {
    const steps = begin()
    let timer: ReturnType<typeof setTimeout>
    const go = () => {
      const { done, value } = steps.next()
      if (done) setAnswer(() => value)
      else timer = setTimeout(go)
    }
    timer = setTimeout(go)
    return () => clearTimeout(timer)
  }, of)
  return answer
}
