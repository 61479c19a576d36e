import { describe, expect, test } from 'vitest'
import {
  closingLine,
  playwrightCounts,
  playwrightFailures,
  vitestCounts,
  vitestFailures,
} from '../../tools/steps.mjs'

describe('counting', () => {
  const results = (statuses: readonly string[]) => ({
    status: statuses.includes('failed') ? 'failed' : 'passed',
    assertionResults: statuses.map((status) => ({ status })),
  })

  test('cases of a report', () => {
    const report = {
      numPassedTests: 2,
      numFailedTests: 1,
      numPendingTests: 1,
      numTodoTests: 0,
      testResults: [results(['passed', 'failed']), results(['passed', 'pending'])],
    }
    expect(vitestCounts(JSON.stringify(report))).toEqual({ passed: 2, failed: 1, skipped: 1 })
  })

  test('a file that could not be loaded counts as a failure', () => {
    const report = {
      numPassedTests: 1,
      numFailedTests: 0,
      numPendingTests: 0,
      numTodoTests: 0,
      testResults: [results(['passed']), { status: 'failed', assertionResults: [] }],
    }
    expect(vitestCounts(JSON.stringify(report))).toMatchObject({ passed: 1, failed: 1 })
  })

  test('a flaky case and an error outside of any case count as failures', () => {
    const report = { stats: { expected: 5, unexpected: 1, flaky: 1, skipped: 2 }, errors: [{}] }
    expect(playwrightCounts(JSON.stringify(report))).toEqual({ passed: 5, failed: 3, skipped: 2 })
  })

  test('what failed is named with its file and the first line of why', () => {
    const failed = {
      status: 'failed',
      fullName: 'a law',
      failureMessages: ['\u001b[31mExpected 2\u001b[39m\nat x'],
    }
    const vitest = {
      testResults: [
        { name: 'tests/a.test.ts', status: 'failed', assertionResults: [failed, { status: 'passed' }] },
        { name: 'tests/b.test.ts', status: 'failed', message: 'no such module', assertionResults: [] },
        { name: 'tests/c.test.ts', status: 'passed', assertionResults: [{ status: 'passed' }] },
      ],
    }
    expect(vitestFailures(JSON.stringify(vitest))).toEqual([
      'tests/a.test.ts > a law: Expected 2',
      'tests/b.test.ts: no such module',
    ])
    const spec = (title: string, status: string, results: object[]) => ({
      file: 'dip.spec.ts',
      line: 7,
      title,
      tests: [{ status, results }],
    })
    const playwright = {
      errors: [{ message: 'port taken' }],
      suites: [
        {
          specs: [spec('counts', 'expected', [])],
          suites: [{ specs: [spec('rings', 'unexpected', [{ errors: [{ message: 'Timed out\nat y' }] }])] }],
        },
      ],
    }
    expect(playwrightFailures(JSON.stringify(playwright))).toEqual([
      'port taken',
      'dip.spec.ts:7 > rings: Timed out',
    ])
  })

  test('the closing line names what was skipped only when something was', () => {
    expect(closingLine({ passed: 3, failed: 0, skipped: 0 })).toBe('3 passed, 0 failed')
    expect(closingLine({ passed: 3, failed: 1, skipped: 2 })).toBe('3 passed, 1 failed, 2 skipped')
  })
})
