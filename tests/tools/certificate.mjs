import { X509Certificate } from 'node:crypto'
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { networkInterfaces } from 'node:os'
import { at } from './project.mjs'

const DAY_MS = 86_400_000
// iOS refuses server certificates valid for longer than 825 days (Apple support 103769).
const VALID_DAYS = 397
const RENEW_DAYS = 7

/** IPv4 addresses of this machine on its networks, loopback left out. */
export function lanAddresses() {
  return Object.values(networkInterfaces())
    .flat()
    .filter((entry) => entry && entry.family === 'IPv4' && !entry.internal)
    .map((entry) => entry.address)
}

/**
 * Key and certificate (PEM) for localhost and the given addresses. Kept in .cache, so that a phone which was
 * told to trust it once still does after a restart; made anew when an address is missing or it runs out.
 */
export async function certificateFor(addresses) {
  const folder = at('.cache/https')
  const [keyFile, certFile] = [`${folder}/key.pem`, `${folder}/cert.pem`]
  if (existsSync(keyFile) && existsSync(certFile)) {
    const cert = readFileSync(certFile, 'utf8')
    const read = new X509Certificate(cert)
    const lasts = Date.parse(read.validTo) - Date.now() > RENEW_DAYS * DAY_MS
    if (lasts && addresses.every((address) => read.checkIP(address))) {
      return { key: readFileSync(keyFile, 'utf8'), cert }
    }
  }
  const { generate } = await import('selfsigned')
  const made = await generate([{ name: 'commonName', value: 'Bucketside on this network' }], {
    keyType: 'ec',
    algorithm: 'sha256',
    notAfterDate: new Date(Date.now() + VALID_DAYS * DAY_MS),
    extensions: [
      // Phones only let a certificate authority be trusted by hand.
      { name: 'basicConstraints', cA: true, critical: true },
      { name: 'keyUsage', digitalSignature: true, keyCertSign: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      {
        name: 'subjectAltName',
        altNames: [
          { type: 2, value: 'localhost' },
          ...['127.0.0.1', ...addresses].map((ip) => ({ type: 7, ip })),
        ],
      },
    ],
  })
  mkdirSync(folder, { recursive: true })
  writeFileSync(keyFile, made.private, { mode: 0o600 })
  writeFileSync(certFile, made.cert)
  return { key: made.private, cert: made.cert }
}
