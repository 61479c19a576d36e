import { describe, expect, test } from 'vitest'
import { closingLine, playwrightCounts, vitestCounts } from '../../tools/steps.mjs'

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

  test('the closing line names what was skipped only when something was', () => {
    expect(closingLine({ passed: 3, failed: 0, skipped: 0 })).toBe('3 passed, 0 failed')
    expect(closingLine({ passed: 3, failed: 1, skipped: 2 })).toBe('3 passed, 1 failed, 2 skipped')
  })
})
