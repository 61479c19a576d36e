/** Licences of everything that ships, as one text beside the app: each asks to be shown with its copies. */
import { readdirSync, readFileSync } from 'node:fs'
import { at } from './project.mjs'

/** What the packages of ours ship on their part. */
const WITHIN = ['@preact/signals-core']

const read = (path) => readFileSync(at(path), 'utf8')

function ofPackage(name) {
  const folder = `node_modules/${name}`
  const { version, license } = JSON.parse(read(`${folder}/package.json`))
  const file = readdirSync(at(folder)).find((entry) => /^licen[cs]e/i.test(entry))
  if (!file) throw new Error(`${name} has no licence file`)
  return `${name} ${version} (${license})\n\n${read(`${folder}/${file}`).trim()}`
}

/** The text: this project's own licence, then those of packages, typeface and voices. */
export function licencesText() {
  const { dependencies } = JSON.parse(read('package.json'))
  const packages = [...Object.keys(dependencies), ...WITHIN].sort().map(ofPackage)
  return [
    `Bucketside (MIT)\n\n${read('LICENSE').trim()}`,
    ...packages,
    `Overpass, the typeface (SIL Open Font License 1.1)\n\n${read('src/ui/type/OFL.txt').trim()}`,
    `The spoken words\n\n${read('public/voice/README.md').trim()}`,
  ].join(`\n\n${'-'.repeat(72)}\n\n`)
}
