/** Installs what is missing, builds and serves the app. npm start [-- --https] [-- --port 4173] */
import { parseArgs } from 'node:util'
import { at, ensureModules, run } from './project.mjs'
import { serve } from './static.mjs'

const { values } = parseArgs({
  options: { https: { type: 'boolean', default: false }, port: { type: 'string' } },
})
const wanted = Number(values.port ?? (values.https ? 8443 : 4173))
if (!Number.isInteger(wanted) || wanted < 0 || wanted > 65_535) {
  console.error(`--port must be a whole number from 0 to 65535, not ${values.port}`)
  process.exit(1)
}

ensureModules()
if ((await run([process.execPath, at('tests/tools/build.mjs')])) !== 0) process.exit(1)

const options = { root: at('dist'), port: wanted }
let addresses = []
if (values.https) {
  const { certificateFor, lanAddresses } = await import('./certificate.mjs')
  addresses = lanAddresses()
  options.tls = await certificateFor(addresses)
  options.host = '0.0.0.0'
  options.extra = { '/trust.crt': { type: 'application/x-x509-ca-cert', content: options.tls.cert } }
}

/** The port asked for; the next free one when nobody asked and the usual one is taken. */
async function listen() {
  for (let port = wanted; ; port++) {
    try {
      return await serve({ ...options, port })
    } catch (error) {
      if (error.code !== 'EADDRINUSE' || values.port || port > wanted + 20) throw error
    }
  }
}

const { port } = await listen().catch((error) => {
  console.error(error.code === 'EADDRINUSE' ? `Port ${wanted} is taken. Name another: --port` : error.message)
  process.exit(1)
})
const scheme = values.https ? 'https' : 'http'
console.log(`\nBucketside is at ${scheme}://localhost:${port}/`)
for (const address of addresses) console.log(`  on this network: https://${address}:${port}/`)
if (values.https) {
  console.log(`
The certificate was made on this machine, so the phone will warn about it. It works offline only after the
phone trusts it: open /trust.crt there, install it as a CA certificate (Android: Settings, Security; iOS:
Settings, Profile downloaded, then General, About, Certificate Trust Settings), and load the page again.
Remove it when you are done. On a real host none of this is needed.`)
}
console.log('Stop with Ctrl+C.')
