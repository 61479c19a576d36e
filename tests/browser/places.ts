import { fileURLToPath } from 'node:url'

/** The built app is served from a sub-path, as it may be anywhere. */
export const APP_PORT = 4317
export const APP_BASE = '/glazing/table/'
export const APP_URL = `http://localhost:${APP_PORT}${APP_BASE}`

/** The page with five clocks and nothing but the store behind them. */
export const PAGE_PORT = 4318
export const PAGE_URL = `http://localhost:${PAGE_PORT}/`

/** Absolute path of a file of the project. */
export const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url))
