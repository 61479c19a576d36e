import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

const root = fileURLToPath(new URL('../../..', import.meta.url))
const FUNCTION = /^export (async function|function|const \w+ = (async )?(\(|<|\w+ =>))/

/** Lines that export a function with no docstring right above. */
const undocumented = (path: string): string[] => {
  const lines = readFileSync(`${root}/${path}`, 'utf8').split('\n')
  return lines.flatMap((line, i) =>
    FUNCTION.test(line) && !lines[i - 1]?.trimEnd().endsWith('*/') ? [`${path}:${i + 1} ${line}`] : [],
  )
}

test('every function that one file of engine, planner, table, store or shared offers another says what it does', () => {
  const files = ['src/engine', 'src/planner', 'src/table', 'src/store', 'shared'].flatMap((room) =>
    readdirSync(`${root}/${room}`, { recursive: true, encoding: 'utf8' }).flatMap((file) =>
      /\.ts$/.test(file) ? [`${room}/${file}`] : [],
    ),
  )
  expect(files.length).toBeGreaterThan(100)
  expect(files.flatMap(undocumented)).toEqual([])
})
