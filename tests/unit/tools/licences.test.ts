import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { licencesText } from '../../tools/licences.mjs'

test('the licences of all that ships are in one text, whole', () => {
  const text = licencesText()
  const { dependencies } = JSON.parse(
    readFileSync(new URL('../../../package.json', import.meta.url), 'utf8'),
  ) as { dependencies: Record<string, string> }
  for (const [name, version] of Object.entries(dependencies)) expect(text).toContain(`${name} ${version} (`)
  expect(text.match(/Permission is hereby granted/g)?.length).toBeGreaterThanOrEqual(5)
  expect(text).toContain('Apache License')
  expect(text).toContain('SIL OPEN FONT LICENSE')
})
