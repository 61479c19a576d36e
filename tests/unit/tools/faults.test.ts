import { existsSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { FAULTS } from '../../faults/list.ts'

const at = (file: string): URL => new URL(`../../../${file}`, import.meta.url)

test.each(FAULTS)('the fault "$id" still has its line, and tests to notice it', ({ file, find, tests }) => {
  expect(readFileSync(at(file), 'utf8').split(find)).toHaveLength(2)
  expect(tests.filter((test) => !existsSync(at(test)))).toEqual([])
})
