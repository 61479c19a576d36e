/** Draws the icons of public/ from icon.svg: node tests/tools/icons.mjs */
import { readFileSync } from 'node:fs'
import { chromium } from '@playwright/test'
import { CHROMIUM_ARGS, ensureChromium } from './chromium.mjs'
import { at, ensureModules } from './project.mjs'

// A maskable icon may be cut to a circle of 40 % of its width in radius (W3C Web Application Manifest).
const MASKABLE_SCALE = 0.82

const ICONS = [
  { to: 'icon-180.png', size: 180, scale: 1 },
  { to: 'icon-192.png', size: 192, scale: 1 },
  { to: 'icon-512.png', size: 512, scale: 1 },
  { to: 'icon-maskable-512.png', size: 512, scale: MASKABLE_SCALE },
]

ensureModules()
const svg = readFileSync(at('public/icon.svg'), 'utf8')
const [, paper] = /<rect [^>]*fill="(#\w+)"/.exec(svg)
const browser = await chromium.launch({ executablePath: ensureChromium(), args: CHROMIUM_ARGS })
for (const { to, size, scale } of ICONS) {
  const page = await browser.newPage({ viewport: { width: size, height: size } })
  await page.setContent(`<style>
    body { margin: 0; background: ${paper} }
    svg { display: block; width: 100vw; height: 100vh; transform: scale(${scale}) }
  </style>${svg}`)
  await page.screenshot({ path: at(`public/${to}`) })
  await page.close()
}
await browser.close()
