/** Serves dist/ without building: node tests/tools/serve.mjs [--port 4173] [--base /] [--root dist] */
import { parseArgs } from 'node:util'
import { at } from './project.mjs'
import { serve } from './static.mjs'

const { values } = parseArgs({
  options: {
    port: { type: 'string', default: '4173' },
    base: { type: 'string', default: '/' },
    root: { type: 'string', default: at('dist') },
  },
})
const { port } = await serve({ root: values.root, port: Number(values.port), base: values.base })
console.log(`http://localhost:${port}${values.base}`)
