import { fileURLToPath } from 'node:url'

/** Two ports from here on; another first one lets two runs go on side by side. */
const FIRST_PORT = Number(process.env.TEST_PORT ?? 4317)

/** The built app is served from a sub-path, as it may be anywhere. */
export const APP_PORT = FIRST_PORT
export const APP_BASE = '/glazing/table/'
export const APP_URL = `http://localhost:${APP_PORT}${APP_BASE}`

/** The page with five clocks and nothing but the store behind them. */
export const PAGE_PORT = FIRST_PORT + 1
export const PAGE_URL = `http://localhost:${PAGE_PORT}/`

/** Absolute path of a file of the project. */
export const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url))

/** What a test says after its name when only `npm run prove` has time for it. */
export const LONG = { tag: '@long' }
