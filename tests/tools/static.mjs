import { createReadStream } from 'node:fs'
import { readFile, stat } from 'node:fs/promises'
import { createServer } from 'node:http'
import { createServer as createSecureServer } from 'node:https'
import { extname, join, normalize, sep } from 'node:path'
import { promisify } from 'node:util'
import { gzip } from 'node:zlib'
import { HEADERS } from './headers.mjs'

const gzipped = promisify(gzip)

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.md': 'text/markdown; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.mp3': 'audio/mpeg',
  '.m4a': 'audio/mp4',
  '.ogg': 'audio/ogg',
  '.opus': 'audio/ogg',
  '.wav': 'audio/wav',
  '.ics': 'text/calendar; charset=utf-8',
}

/** Content type of a file by its extension. */
export const typeOf = (path) => TYPES[extname(path).toLowerCase()] ?? 'application/octet-stream'

const COMPRESSIBLE = /^text\/|json|javascript|svg|wasm/

/** The file a URL path names below `base`; null when it is outside of it. */
function fileOf(root, base, url) {
  let path
  try {
    path = decodeURIComponent(new URL(url, 'http://localhost').pathname)
  } catch {
    return null
  }
  if (!path.startsWith(base)) return null
  const file = normalize(join(root, path.slice(base.length)))
  return file === normalize(root) || file.startsWith(normalize(root + sep)) ? file : null
}

/** What was compressed before, by path, size and time of change. */
const compressed = new Map()

async function compress(file, etag) {
  const key = `${file} ${etag}`
  let content = compressed.get(key)
  if (!content) {
    content = await gzipped(await readFile(file))
    compressed.set(key, content)
  }
  return content
}

async function answer(request, response, { root, base, extra }) {
  if (request.method !== 'GET' && request.method !== 'HEAD') return void response.writeHead(405).end()
  const body = extra[request.url]
  if (body) return void response.writeHead(200, { 'content-type': body.type }).end(body.content)
  let file = fileOf(root, base, request.url)
  let found = file && (await stat(file).catch(() => null))
  if (found?.isDirectory()) {
    file = join(file, 'index.html')
    found = await stat(file).catch(() => null)
  }
  if (!found?.isFile()) return void response.writeHead(404, { 'content-type': 'text/plain' }).end('Not found')

  const type = typeOf(file)
  const etag = `"${found.size.toString(36)}-${Math.floor(found.mtimeMs).toString(36)}"`
  // Only what carries its content's hash in its name may be kept without asking.
  const hashed = /\/assets\/[^/]+-[\w-]{8}\.\w+$/.test(file)
  const headers = {
    'content-type': type,
    'cache-control': hashed ? 'public, max-age=31536000, immutable' : 'no-cache',
    ...HEADERS,
    vary: 'accept-encoding',
    etag,
  }
  if (request.headers['if-none-match'] === etag) return void response.writeHead(304, headers).end()
  const packs = COMPRESSIBLE.test(type) && /\bgzip\b/.test(request.headers['accept-encoding'] ?? '')
  const content = packs ? await compress(file, etag) : null
  if (content) headers['content-encoding'] = 'gzip'
  response.writeHead(200, { ...headers, 'content-length': content ? content.length : found.size })
  if (request.method === 'HEAD') response.end()
  else if (content) response.end(content)
  else createReadStream(file).pipe(response)
}

/**
 * Serves a folder as any static host would: correct types, index.html for a folder, 404 for what is missing,
 * no rewriting of paths. `base` is the sub-path it is served from, `extra` maps paths to
 * `{ type, content }`, `tls` is `{ key, cert }`. Resolves to the listening server and its port.
 */
export function serve({ root, port = 0, host = '127.0.0.1', base = '/', tls = null, extra = {} }) {
  const listener = (request, response) => {
    answer(request, response, { root, base, extra }).catch((error) => {
      console.error(error)
      if (!response.headersSent) response.writeHead(500)
      response.end()
    })
  }
  const server = tls ? createSecureServer(tls, listener) : createServer(listener)
  return new Promise((resolve, reject) => {
    server.once('error', reject)
    server.listen(port, host, () => resolve({ server, port: server.address().port }))
  })
}
