/**
 * npm run words: texts for translators, as PO files, and back.
 *
 *     npm run words                      what there is of each language
 *     npm run words -- write es es.po    all texts of Spanish beside their English
 *     npm run words -- read es es.po     takes an edited file back into src/words/es
 *     npm run words -- new de            a folder for German, in English until it is translated
 */
import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { at, ensureModules, ROOT, tool } from './project.mjs'

ensureModules()
const { readPo, writePo } = await import('./words/po.mjs')
const { tallyOf } = await import('./words/texts.mjs')
const { freshFolder, withLanguage } = await import('./words/fresh.mjs')

const LIST = 'shared/languages.ts'
const folderOf = (code) => `src/words/${code}`

/** A folder's sources by name. */
function read(code) {
  const folder = at(folderOf(code))
  if (!existsSync(folder)) throw new Error(`there is no folder ${folderOf(code)}`)
  const files = readdirSync(folder).sort()
  return new Map(files.map((file) => [file, readFileSync(`${folder}/${file}`, 'utf8')]))
}

/** Writes sources, by path from the project's top, as the project writes them. */
function keep(sources) {
  for (const [path, source] of sources) writeFileSync(at(path), source)
  const [command, ...args] = tool('biome', 'check', '--write', '--error-on-warnings', ...sources.keys())
  if (sources.size > 0) execFileSync(command, args, { cwd: ROOT, stdio: 'pipe' })
}

const within = (code, folder) =>
  new Map([...folder].map(([file, source]) => [`${folderOf(code)}/${file}`, source]))

const TASKS = {
  write(code, file = `${code}.po`) {
    writeFileSync(file, writePo(code, read('en'), read(code)))
    console.log(`${file} is written.`)
  },
  read(code, file = `${code}.po`) {
    const { changed, texts, left, wrong } = readPo(readFileSync(file, 'utf8'), code, read('en'), read(code))
    for (const it of left) console.log(`left out: ${it}`)
    if (wrong.length > 0) throw new Error(`nothing is taken, as this is wrong:\n${wrong.join('\n')}`)
    keep(within(code, changed))
    console.log(`${texts} texts changed in ${changed.size} files.`)
  },
  new(code) {
    const sources = freshFolder(code, read('en'))
    const list = withLanguage(readFileSync(at(LIST), 'utf8'), code)
    mkdirSync(at(folderOf(code)))
    keep(new Map([...within(code, sources), [LIST, list]]))
    console.log(`${folderOf(code)} is made. Next: npm run words -- write ${code} ${code}.po`)
  },
}

const { positionals } = parseArgs({ allowPositionals: true })
const [task, code, file] = positionals
try {
  if (task === undefined) {
    const codes = readdirSync(at('src/words'), { withFileTypes: true }).filter((it) => it.isDirectory())
    for (const { name } of codes) {
      const { texts, english, alone } = tallyOf(name, read('en'), read(name))
      console.log(
        `${name}: ${texts} texts, ${english} still in English, in code alone: ${alone.join(', ') || 'none'}`,
      )
    }
  } else if (Object.hasOwn(TASKS, task) && code !== undefined) TASKS[task](code, file)
  else throw new Error('npm run words -- write|read|new LANGUAGE [FILE]')
} catch (error) {
  console.error(error.message)
  process.exitCode = 1
}
